// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/store/file_layer.h"

namespace sumpbook::store {

/// The real files of a Linux machine. The only code of the model that makes system calls.
class PosixFileLayer final : public FileLayer {
public:
    Io<Handle> open(const std::string& path, OpenMode mode) override;
    void close(Handle file) override;
    Io<std::size_t> read(Handle file, std::uint64_t at, std::span<std::uint8_t> into) override;
    Io<std::size_t> write(Handle file, std::uint64_t at, ByteView bytes) override;
    Io<void> sync(Handle file) override;
    Io<void> truncate(Handle file, std::uint64_t size) override;
    Io<std::uint64_t> size(Handle file) override;
    Io<FileIdentity> identity(Handle file) override;
    Io<FileIdentity> identity(const std::string& path) override;
    Io<std::string> real_path(const std::string& path) override;
    Io<void> rename(const std::string& from, const std::string& to) override;
    Io<void> rename_new(const std::string& from, const std::string& to) override;
    Io<void> remove(const std::string& path) override;
    Io<void> sync_folder(const std::string& folder) override;
    Io<void> make_folders(const std::string& folder) override;
    Io<std::vector<std::string>> list(const std::string& folder) override;
    Io<std::uint32_t> mode(Handle file) override;
    Io<void> set_mode(Handle file, std::uint32_t mode) override;
    Io<bool> try_lock(Handle file, LockKind kind) override;
    void unlock(Handle file) override;
    void pause(int milliseconds) override;
    void will_fill(ByteView memory) override;
    std::string boot_id() override;
    std::string self() override;
};

} // namespace sumpbook::store
