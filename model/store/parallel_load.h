// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/store/loader.h"

namespace sumpbook::store {

/// How many threads read a file, each through a window of its own of so many bytes.
struct Readers {
    unsigned threads = 1;
    std::size_t window_bytes = Window::usual_bytes;
};
/// More threads than this would add memory and no speed.
inline constexpr unsigned most_threads = 4;

/// Loads whole actions from byte `from` to `size`: the outcome, the loader and every sentence are those of
/// scan_actions, whatever is in the file and whatever the number of threads. They read by turns, never two at
/// once, and verify at the same time what each has read. Throws IoFailure.
[[nodiscard]] Scan load_actions(const OpenFile& file, std::uint64_t size, std::uint64_t from, ScanDepth depth,
                                Readers readers, Loader& loader);

} // namespace sumpbook::store
