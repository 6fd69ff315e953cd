// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/file_layer.h"

#include "model/store/hash.h"

#include <fmt/format.h>

#include <algorithm>
#include <system_error>

namespace sumpbook::store {

Io<OpenFile> open_file(FileLayer& layer, const std::string& path, OpenMode mode) {
    const auto handle = repeat_interrupted([&] { return layer.open(path, mode); });
    if (!handle) return tl::unexpected<IoError>(handle.error());
    return OpenFile(layer, *handle);
}

Io<std::size_t> read_fully(const OpenFile& file, std::uint64_t at, std::span<std::uint8_t> into) {
    std::size_t done = 0;
    while (done < into.size()) {
        const auto got = repeat_interrupted(
            [&] { return file.layer().read(file.handle(), at + done, into.subspan(done)); });
        if (!got) return tl::unexpected<IoError>(got.error());
        if (*got == 0) break;
        done += *got;
    }
    return done;
}

Io<void> write_fully(const OpenFile& file, std::uint64_t at, ByteView bytes) {
    std::size_t done = 0;
    while (done < bytes.size()) {
        const auto put = repeat_interrupted(
            [&] { return file.layer().write(file.handle(), at + done, bytes.subspan(done)); });
        if (!put) return tl::unexpected<IoError>(put.error());
        if (*put == 0) return io_fail(IoFault::no_space, 0);
        done += *put;
    }
    return {};
}

Io<void> keep_open(FileLayer& layer, const std::string& path, OpenMode mode, std::optional<OpenFile>& kept) {
    if (kept) {
        const auto named = layer.identity(path);
        const auto open = layer.identity(kept->handle());
        if (named && open && *named == *open) return {};
        kept.reset();
    }
    auto file = open_file(layer, path, mode);
    if (!file) return tl::unexpected<IoError>(file.error());
    kept.emplace(std::move(*file));
    return {};
}

Io<void> write_text(const OpenFile& file, const std::string& text) {
    if (const auto written = write_fully(file, 0, as_bytes(text)); !written) return written;
    const auto size = file.layer().size(file.handle());
    if (!size) return tl::unexpected<IoError>(size.error());
    if (*size <= text.size()) return {};
    return file.layer().truncate(file.handle(), text.size());
}

Io<std::string> read_text(const OpenFile& file, std::size_t limit) {
    const auto size = file.layer().size(file.handle());
    if (!size) return tl::unexpected<IoError>(size.error());
    Bytes bytes(std::min<std::uint64_t>(*size, limit));
    const auto got = read_fully(file, 0, bytes);
    if (!got) return tl::unexpected<IoError>(got.error());
    return std::string(bytes.begin(), bytes.begin() + static_cast<std::ptrdiff_t>(*got));
}

Io<std::string> read_text(FileLayer& layer, const std::string& path, std::size_t limit) {
    const auto file = open_file(layer, path, OpenMode::read);
    if (!file) return tl::unexpected<IoError>(file.error());
    return read_text(*file, limit);
}

std::string folder_of(const std::string& path) {
    const auto slash = path.rfind('/');
    if (slash == std::string::npos) return ".";
    return slash == 0 ? "/" : path.substr(0, slash);
}

Io<void> sync_folder_of(FileLayer& layer, const std::string& path) {
    auto synced = layer.sync_folder(folder_of(path));
    if (!synced && synced.error().fault == IoFault::not_supported) return {};
    return synced;
}

std::string reason_of(const IoError& error) {
    switch (error.fault) {
    case IoFault::not_found:
        return "there is no such file or folder";
    case IoFault::exists:
        return "a file of that name is already there";
    case IoFault::no_space:
        return "the disk is full";
    case IoFault::denied:
        return "permission is missing";
    case IoFault::read_only:
        return "the disk can only be read";
    case IoFault::interrupted:
        return "it was interrupted";
    case IoFault::not_supported:
        return "this disk or share does not support it";
    case IoFault::is_link:
        return "it is a link to another file";
    case IoFault::ended:
        return "it became shorter while it was read";
    case IoFault::other:
        break;
    }
    return fmt::format("the system reported error {} ({})", error.code,
                       std::generic_category().default_error_condition(error.code).message());
}

Place file_place(const std::string& path) {
    return {.file = path, .line = {}, .column = {}, .text = {}};
}

Problem io_problem(const std::string& path, const std::string& done, const IoError& error) {
    return {ProblemKind::io, fmt::format("The garage file could not be {}: {}.", done, reason_of(error)),
            file_place(path)};
}

} // namespace sumpbook::store
