// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/tail.h"

#include <fmt/format.h>

#include <algorithm>

namespace sumpbook::store {
namespace {

constexpr int most_cut_files = 1000;
constexpr std::size_t copied_at_once = 64 * 1024;

/// The first name that is still free, already made.
Io<std::pair<std::string, OpenFile>> make_cut_file(FileLayer& files, const std::string& path) {
    for (int n = 1;; ++n) {
        std::string name = fmt::format("{}.cut-{}", path, n);
        auto made = open_file(files, name, OpenMode::create_new);
        if (made) return std::pair(std::move(name), std::move(*made));
        if (made.error().fault != IoFault::exists || n == most_cut_files)
            return tl::unexpected<IoError>(made.error());
    }
}

Io<void> copy(const OpenFile& from_file, std::uint64_t from, std::uint64_t size, const OpenFile& to) {
    Bytes piece;
    for (std::uint64_t at = from; at < size; at += piece.size()) {
        piece.resize(static_cast<std::size_t>(std::min<std::uint64_t>(copied_at_once, size - at)));
        const auto read = read_fully(from_file, at, piece);
        if (!read) return tl::unexpected<IoError>(read.error());
        if (*read != piece.size()) return io_fail(IoFault::other, 0);
        if (const auto written = write_fully(to, at - from, piece); !written) return written;
    }
    return to.layer().sync(to.handle());
}

} // namespace

Result<std::string> set_tail_aside(const OpenFile& file, const std::string& path, std::uint64_t from,
                                   std::uint64_t size) {
    FileLayer& files = file.layer();
    const auto problem = [&](const IoError& error) {
        return pass_on(
            io_problem(path, "made ready for writing: its cut-off end could not be set aside", error));
    };
    auto aside = make_cut_file(files, path);
    if (!aside) return problem(aside.error());
    auto kept = copy(file, from, size, aside->second);
    if (kept) kept = files.sync_folder(folder_of(path));
    if (kept) kept = files.truncate(file.handle(), from);
    if (!kept) return problem(kept.error());
    return aside->first;
}

Result<void> make_file(FileLayer& files, const std::string& path, ByteView bytes) {
    const std::string temporary = path + ".new";
    static_cast<void>(files.remove(temporary)); // left by an attempt that was interrupted
    Io<void> made;
    {
        const auto file = open_file(files, temporary, OpenMode::create_new);
        if (!file) return pass_on(io_problem(path, "made", file.error()));
        made = write_fully(*file, 0, bytes);
        if (made) made = files.sync(file->handle());
    }
    if (made) made = files.rename_new(temporary, path);
    if (!made) {
        static_cast<void>(files.remove(temporary));
        if (made.error().fault == IoFault::exists)
            return refuse("There is already a file of this name.", {path, {}, {}, {}});
        return pass_on(io_problem(path, "made", made.error()));
    }
    if (const auto synced = files.sync_folder(folder_of(path)); !synced) {
        // The name may not survive a power cut; say so rather than promise.
        static_cast<void>(files.remove(path));
        return pass_on(io_problem(path, "made", synced.error()));
    }
    return {};
}

} // namespace sumpbook::store
