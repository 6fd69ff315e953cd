// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/store/file_layer.h"

#include <string>

namespace sumpbook::store {

/// A new file and its name.
struct NamedFile {
    std::string name;
    OpenFile file;
};
/// BASE1, BASE2, ...: the first name that is still free, already made.
[[nodiscard]] Io<NamedFile> make_numbered(FileLayer& files, const std::string& base);

/// Copies the bytes from `from` to `size` into a new file FILE.cut-1 (or -2, ...), synced, and only then cuts
/// them off. Returns the name of that file. The caller holds the exclusive lock.
[[nodiscard]] Result<std::string> set_tail_aside(const OpenFile& file, const std::string& path,
                                                 std::uint64_t from, std::uint64_t size);

/// A whole new file: temporary name beside it, sync, rename, sync of the folder. Refused where `path` exists;
/// the temporary file is removed when anything fails.
[[nodiscard]] Result<void> make_file(FileLayer& files, const std::string& path, ByteView bytes);

} // namespace sumpbook::store
