// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/store/file_layer.h"

#include <map>
#include <memory>
#include <vector>

namespace sumpbook::store {

/// Files that are only in memory: no disk, no system calls, gone with this object. Folders need not exist and
/// locks are always free, since nobody else sees these files.
class MemoryFiles final : public FileLayer {
public:
    void put(const std::string& path, ByteView bytes);
    /// Absent where there is no such file.
    [[nodiscard]] const Bytes* bytes_of(const std::string& path) const;

    Io<Handle> open(const std::string& path, OpenMode mode) override;
    void close(Handle file) override { open_[static_cast<std::size_t>(file)].reset(); }
    Io<std::size_t> read(Handle file, std::uint64_t at, std::span<std::uint8_t> into) override;
    Io<std::size_t> write(Handle file, std::uint64_t at, ByteView bytes) override;
    Io<void> sync(Handle /*file*/) override { return {}; }
    Io<void> truncate(Handle file, std::uint64_t size) override;
    Io<std::uint64_t> size(Handle file) override { return of(file).bytes.size(); }
    Io<FileIdentity> identity(Handle file) override { return FileIdentity{1, of(file).number}; }
    Io<FileIdentity> identity(const std::string& path) override;
    Io<void> rename(const std::string& from, const std::string& to) override;
    Io<void> rename_new(const std::string& from, const std::string& to) override;
    Io<void> remove(const std::string& path) override;
    Io<void> sync_folder(const std::string& /*folder*/) override { return {}; }
    Io<void> make_folders(const std::string& /*folder*/) override { return {}; }
    Io<bool> try_lock(Handle /*file*/, LockKind /*kind*/) override { return true; }
    void unlock(Handle /*file*/) override {}
    void pause(int /*milliseconds*/) override {}
    std::string boot_id() override { return "memory"; }
    std::string self() override { return "this test"; }

private:
    struct File {
        std::uint64_t number = 0;
        Bytes bytes;
    };
    [[nodiscard]] File& of(Handle file) { return *open_[static_cast<std::size_t>(file)]; }

    std::map<std::string, std::shared_ptr<File>> files_;
    std::vector<std::shared_ptr<File>> open_;
    std::uint64_t last_number_ = 0;
};

} // namespace sumpbook::store
