// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/model/store/files_around.h"

#include <algorithm>

namespace sumpbook::store {

template <class Do>
auto FilesAround::ask(const FileOperation& operation, Do&& what) -> decltype(what()) {
    if (const auto error = before(operation)) return tl::unexpected<IoError>(*error);
    auto result = what();
    after(operation, result.has_value());
    return result;
}

FileOperation FilesAround::on(Handle file, std::string name) const {
    const auto path = paths_.find(file);
    return {
        .name = std::move(name), .path = path == paths_.end() ? "" : path->second, .to = {}, .file = file};
}

namespace {

FileOperation by_name(std::string name, const std::string& path, const std::string& to = {}) {
    return {.name = std::move(name), .path = path, .to = to};
}

} // namespace

Io<FileLayer::Handle> FilesAround::open(const std::string& path, OpenMode mode) {
    return ask(by_name("open", path), [&] {
        auto handle = inner_->open(path, mode);
        if (handle) paths_[*handle] = path;
        return handle;
    });
}
void FilesAround::close(Handle file) {
    const auto operation = on(file, "close");
    inner_->close(file);
    paths_.erase(file);
    after(operation, true);
}
Io<std::size_t> FilesAround::read(Handle file, std::uint64_t at, std::span<std::uint8_t> into) {
    auto operation = on(file, "read");
    operation.at = at;
    const auto most = most_at_once(operation, into.size());
    return ask(operation, [&] { return inner_->read(file, at, into.first(std::min(into.size(), most))); });
}
Io<std::size_t> FilesAround::write(Handle file, std::uint64_t at, ByteView bytes) {
    auto operation = on(file, "write");
    operation.at = at;
    operation.bytes = bytes.first(std::min(bytes.size(), most_at_once(operation, bytes.size())));
    return ask(operation, [&] { return inner_->write(file, at, operation.bytes); });
}
Io<void> FilesAround::sync(Handle file) {
    return ask(on(file, "sync"), [&] { return inner_->sync(file); });
}
Io<void> FilesAround::truncate(Handle file, std::uint64_t size) {
    auto operation = on(file, "truncate");
    operation.at = size;
    return ask(operation, [&] { return inner_->truncate(file, size); });
}
Io<std::uint64_t> FilesAround::size(Handle file) {
    return ask(on(file, "size"), [&] { return inner_->size(file); });
}
Io<FileIdentity> FilesAround::identity(Handle file) {
    return ask(on(file, "identity"), [&] { return inner_->identity(file); });
}
Io<FileIdentity> FilesAround::identity(const std::string& path) {
    return ask(by_name("identity", path), [&] { return inner_->identity(path); });
}
Io<std::string> FilesAround::real_path(const std::string& path) {
    return ask(by_name("real path", path), [&] { return inner_->real_path(path); });
}
Io<void> FilesAround::rename(const std::string& from, const std::string& to) {
    return ask(by_name("rename", from, to), [&] { return inner_->rename(from, to); });
}
Io<void> FilesAround::rename_new(const std::string& from, const std::string& to) {
    return ask(by_name("rename", from, to), [&] { return inner_->rename_new(from, to); });
}
Io<void> FilesAround::remove(const std::string& path) {
    return ask(by_name("remove", path), [&] { return inner_->remove(path); });
}
Io<void> FilesAround::sync_folder(const std::string& folder) {
    return ask(by_name("sync folder", folder), [&] { return inner_->sync_folder(folder); });
}
Io<void> FilesAround::make_folders(const std::string& folder) {
    return ask(by_name("make folders", folder), [&] { return inner_->make_folders(folder); });
}
Io<std::vector<std::string>> FilesAround::list(const std::string& folder) {
    return ask(by_name("list", folder), [&] { return inner_->list(folder); });
}
Io<std::uint32_t> FilesAround::mode(Handle file) {
    return ask(on(file, "mode"), [&] { return inner_->mode(file); });
}
Io<void> FilesAround::set_mode(Handle file, std::uint32_t mode) {
    return ask(on(file, "set mode"), [&] { return inner_->set_mode(file, mode); });
}
Io<bool> FilesAround::try_lock(Handle file, LockKind kind) {
    return ask(on(file, "lock"), [&] { return inner_->try_lock(file, kind); });
}
void FilesAround::unlock(Handle file) {
    inner_->unlock(file);
    after(on(file, "unlock"), true);
}

} // namespace sumpbook::store
