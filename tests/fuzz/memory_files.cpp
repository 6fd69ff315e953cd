// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/fuzz/memory_files.h"

#include <algorithm>
#include <cerrno>

namespace sumpbook::store {

void MemoryFiles::put(const std::string& path, ByteView bytes) {
    files_[path] = std::make_shared<File>(File{++last_number_, Bytes(bytes.begin(), bytes.end())});
}

const Bytes* MemoryFiles::bytes_of(const std::string& path) const {
    const auto found = files_.find(path);
    return found == files_.end() ? nullptr : &found->second->bytes;
}

Io<FileLayer::Handle> MemoryFiles::open(const std::string& path, OpenMode mode) {
    const bool there = files_.contains(path);
    const bool may_create = mode == OpenMode::create_new || mode == OpenMode::read_write_or_create;
    if (there && mode == OpenMode::create_new) return io_fail(IoFault::exists, EEXIST);
    if (!there && !may_create) return io_fail(IoFault::not_found, ENOENT);
    if (!there) put(path, {});
    open_.push_back(files_[path]);
    return static_cast<Handle>(open_.size() - 1);
}

Io<std::size_t> MemoryFiles::read(Handle file, std::uint64_t at, std::span<std::uint8_t> into) {
    const auto& bytes = of(file).bytes;
    if (at >= bytes.size()) return 0;
    const auto length = std::min(into.size(), bytes.size() - static_cast<std::size_t>(at));
    std::copy_n(bytes.begin() + static_cast<std::ptrdiff_t>(at), length, into.begin());
    return length;
}

Io<std::size_t> MemoryFiles::write(Handle file, std::uint64_t at, ByteView from) {
    auto& bytes = of(file).bytes;
    if (bytes.size() < at + from.size()) bytes.resize(static_cast<std::size_t>(at) + from.size());
    std::ranges::copy(from, bytes.begin() + static_cast<std::ptrdiff_t>(at));
    return from.size();
}

Io<void> MemoryFiles::truncate(Handle file, std::uint64_t size) {
    of(file).bytes.resize(static_cast<std::size_t>(size));
    return {};
}

Io<FileIdentity> MemoryFiles::identity(const std::string& path) {
    const auto found = files_.find(path);
    if (found == files_.end()) return io_fail(IoFault::not_found, ENOENT);
    return FileIdentity{1, found->second->number};
}

Io<void> MemoryFiles::rename(const std::string& from, const std::string& to) {
    const auto found = files_.find(from);
    if (found == files_.end()) return io_fail(IoFault::not_found, ENOENT);
    auto file = found->second;
    files_.erase(found);
    files_[to] = std::move(file);
    return {};
}

Io<void> MemoryFiles::rename_new(const std::string& from, const std::string& to) {
    if (files_.contains(to)) return io_fail(IoFault::exists, EEXIST);
    return rename(from, to);
}

Io<void> MemoryFiles::remove(const std::string& path) {
    if (files_.erase(path) == 0) return io_fail(IoFault::not_found, ENOENT);
    return {};
}

} // namespace sumpbook::store
