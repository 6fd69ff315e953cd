// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/store/file_layer.h"

#include <functional>
#include <string>

namespace sumpbook::store {

/// Copies the bytes from `from` to `size` into a new file FILE.cut-1 (or -2, ...), synced, and only then cuts
/// them off. That file has the permissions of this one. Returns its name. The caller holds the exclusive lock.
[[nodiscard]] Result<std::string> set_tail_aside(const OpenFile& file, const std::string& path,
                                                 std::uint64_t from, std::uint64_t size);

/// Puts the content into a new, empty file that is open for reading and writing.
using Fill = std::function<Result<void>(const OpenFile&)>;

/// A whole new file: temporary name beside it, filled, sync, rename, sync of the folder. Refused where `path`
/// exists; the temporary file is removed when anything fails.
[[nodiscard]] Result<void> make_file(FileLayer& files, const std::string& path, const Fill& fill);
[[nodiscard]] Result<void> make_file(FileLayer& files, const std::string& path, ByteView bytes);

/// Whether a file that was filled and is on the disk may take its place.
using MayReplace = std::function<Result<void>(const OpenFile&)>;

/// A whole file in the place of the one that stands at `path`, in the same steps: the old one or the new one is
/// there at any time. Only its owner may read it until `fill` says who else. `may_replace` looks at it before. The caller holds the exclusive lock, and syncs the
/// folder afterwards: only then is the change on the disk.
[[nodiscard]] Result<void> replace_file(FileLayer& files, const std::string& path, const Fill& fill,
                                        const MayReplace& may_replace);

} // namespace sumpbook::store
