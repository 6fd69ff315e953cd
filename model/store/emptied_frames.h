// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/store/hash.h"
#include "model/store/window.h"

#include <set>
#include <vector>

namespace sumpbook::store {

/// A stretch of a file in whose place other bytes are written.
struct Patch {
    std::uint64_t at = 0;
    std::uint64_t length = 0;
    Bytes bytes;
};

/// What has to be written otherwise for frames to lose their parts and keep their hashes.
struct EmptiedFrames {
    std::vector<Patch> patches;   ///< By place, apart from one another.
    std::set<Hash256> frames;     ///< All that are emptied, those of attachments too.
    std::set<Hash256> incomplete; ///< Of them: a part was left out of this file before.
    std::size_t attachments = 0;  ///< Frames of attachments among them.
    bool complete = false; ///< The file is good to its end, and every frame asked for by its hash stands in it.
};
/// For the frames of these hashes and the attachments of these part hashes, in a file whose every action from
/// byte `from` on is good. Throws IoFailure.
[[nodiscard]] EmptiedFrames empty_frames(Window& window, std::uint64_t from, const std::set<Hash256>& frames,
                                const std::set<Hash256>& attachments);

/// Whether every frame of these hashes stands in a file, good from byte `from` to its end, and shows no part.
/// Throws IoFailure.
[[nodiscard]] bool are_emptied(Window& window, std::uint64_t from, const std::set<Hash256>& frames);

/// The first `size` bytes of a file, with the patches, into an empty one. Returns how many were written.
[[nodiscard]] Io<std::uint64_t> copy_patched(const OpenFile& from, std::uint64_t size,
                                             const std::vector<Patch>& patches, const OpenFile& to);

} // namespace sumpbook::store
