// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/store/frame_set.h"
#include "model/store/loader.h"

namespace sumpbook::store {

/// An open file and what is known of it from outside.
struct OpenedSource {
    std::shared_ptr<const FrameSource> source;
    std::uint64_t bytes = 0;
    std::uint32_t mode = 0; ///< Permissions.
};
/// Opens for reading and locks: others can read it too and not write.
[[nodiscard]] Result<OpenedSource> open_source(FileLayer& files, const std::string& path, Patience patience);

/// One file of a garage, read and verified to the last byte of its attachments: its frames as a set, and
/// what they say.
struct GarageCopy {
    FrameSet set;
    Loader contents;     ///< Records in file order, with their ids; chains; attachments.
    std::uint64_t bytes = 0;
    std::uint32_t mode = 0; ///< Permissions of the file.
    std::vector<std::string> notices;
};

/// Reads without changing anything; other programs can read but not write to it as long as the set refers to
/// it. A save at its end that was cut short is left out, with a notice. Problems: those of GarageFile::open.
[[nodiscard]] Result<GarageCopy> read_copy(FileLayer& files, const std::string& path, Patience patience);

} // namespace sumpbook::store
