// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/store/frame_set.h"

namespace sumpbook::store {

struct WrittenOut {
    std::string path;
    std::uint64_t bytes = 0;
    std::size_t frames = 0;
    std::size_t entries = 0;
    std::size_t fingerprints = 0;
};

/// Writes a set as a new garage file in canonical order, one frame an action, fingerprint records at the end:
/// equal sets give equal bytes. Read back and verified, synced, and only then under its name; the file is
/// whole or not there at all. Refused where `path` exists. `mode`: its permissions, else those of any new
/// file. Bodies are copied piece by piece: never more than one part of a frame is held.
[[nodiscard]] Result<WrittenOut> write_out(FileLayer& files, const FrameSet& set, const std::string& path,
                                           std::optional<std::uint32_t> mode = {});

} // namespace sumpbook::store
