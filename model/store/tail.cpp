// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/tail.h"

#include <fmt/format.h>

#include <algorithm>

namespace sumpbook::store {
namespace {

constexpr int most_numbers = 1000;
constexpr std::size_t copied_at_once = 64 * 1024;

struct NamedFile {
    std::string name;
    OpenFile file;
};

/// BASE1, BASE2, ...: the first name that is still free, already made.
Io<NamedFile> make_numbered(FileLayer& files, const std::string& base, OpenMode how) {
    for (int n = 1;; ++n) {
        std::string name = base + std::to_string(n);
        auto made = open_file(files, name, how);
        if (made) return NamedFile{std::move(name), std::move(*made)};
        if (made.error().fault != IoFault::exists || n == most_numbers)
            return tl::unexpected<IoError>(made.error());
    }
}

/// Who may read and write the one may do so with the other.
Io<void> copy_mode(const OpenFile& from, const OpenFile& to) {
    const auto mode = from.layer().mode(from.handle());
    if (!mode) return tl::unexpected<IoError>(mode.error());
    return to.layer().set_mode(to.handle(), *mode);
}

Io<void> copy(const OpenFile& from_file, std::uint64_t from, std::uint64_t size, const OpenFile& to) {
    Bytes piece;
    for (std::uint64_t at = from; at < size; at += piece.size()) {
        piece.resize(static_cast<std::size_t>(std::min<std::uint64_t>(copied_at_once, size - at)));
        const auto read = read_fully(from_file, at, piece);
        if (!read) return tl::unexpected<IoError>(read.error());
        if (*read != piece.size()) return io_fail(IoFault::ended, 0);
        if (const auto written = write_fully(to, at - from, piece); !written) return written;
    }
    return to.layer().sync(to.handle());
}

/// A filled new file beside `path`, synced. Nothing is left when it fails.
Result<NamedFile> make_beside(FileLayer& files, const std::string& path, const std::string& done,
                              OpenMode how, const Fill& fill) {
    auto temporary = make_numbered(files, path + ".new-", how);
    if (!temporary) return pass_on(io_problem(path, done, temporary.error()));
    auto made = fill(temporary->file);
    if (made) {
        const auto synced = files.sync(temporary->file.handle());
        if (!synced) made = pass_on(io_problem(path, done, synced.error()));
    }
    if (made) return std::move(*temporary);
    static_cast<void>(files.remove(temporary->name));
    return pass_on(made.error());
}

} // namespace

Result<std::string> set_tail_aside(const OpenFile& file, const std::string& path, std::uint64_t from,
                                   std::uint64_t size) {
    FileLayer& files = file.layer();
    const auto problem = [&](const IoError& error) {
        return pass_on(
            io_problem(path, "made ready for writing: its cut-off end could not be set aside", error));
    };
    const auto aside = make_numbered(files, path + ".cut-", OpenMode::create_private);
    if (!aside) return problem(aside.error());
    auto kept = copy_mode(file, aside->file);
    if (kept) kept = copy(file, from, size, aside->file);
    if (kept) kept = sync_folder_of(files, path);
    if (!kept) {
        static_cast<void>(files.remove(aside->name));
        return problem(kept.error());
    }
    if (const auto cut = files.truncate(file.handle(), from); !cut) return problem(cut.error());
    return aside->name;
}

Result<void> make_file(FileLayer& files, const std::string& path, const Fill& fill) {
    const auto temporary = make_beside(files, path, "made", OpenMode::create_new, fill);
    if (!temporary) return pass_on(temporary.error());
    if (const auto renamed = files.rename_new(temporary->name, path); !renamed) {
        static_cast<void>(files.remove(temporary->name));
        if (renamed.error().fault != IoFault::exists)
            return pass_on(io_problem(path, "made", renamed.error()));
        return refuse("There is already a file of this name.",
                      {.file = path, .line = {}, .column = {}, .text = {}});
    }
    if (const auto synced = sync_folder_of(files, path); !synced) {
        // The name may not survive a power cut; say so rather than promise.
        static_cast<void>(files.remove(path));
        return pass_on(io_problem(path, "made", synced.error()));
    }
    return {};
}

Result<void> make_file(FileLayer& files, const std::string& path, ByteView bytes) {
    return make_file(files, path, [&](const OpenFile& file) -> Result<void> {
        const auto written = write_fully(file, 0, bytes);
        if (!written) return pass_on(io_problem(path, "made", written.error()));
        return {};
    });
}

Result<void> replace_file(FileLayer& files, const std::string& path, const Fill& fill,
                          const MayReplace& may_replace) {
    const std::string done = "written anew; nothing was changed";
    const auto temporary = make_beside(files, path, done, OpenMode::create_private, fill);
    if (!temporary) return pass_on(temporary.error());
    auto replaced = may_replace(temporary->file);
    if (replaced) {
        const auto renamed = files.rename(temporary->name, path);
        if (!renamed) replaced = pass_on(io_problem(path, done, renamed.error()));
    }
    if (!replaced) static_cast<void>(files.remove(temporary->name));
    return replaced;
}

} // namespace sumpbook::store
