// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/store/file_layer.h"

#include <map>
#include <optional>
#include <string>

namespace sumpbook::store {

/// One thing a program does with a file.
struct FileOperation {
    std::string name;     ///< "open", "read", "write", "sync", "truncate", "rename", "sync folder", ...
    std::string path;     ///< Of the file, the old name for "rename", or the folder.
    std::string to;       ///< The new name for "rename".
    std::uint64_t at = 0; ///< First byte read or written, or the new length.
    ByteView bytes{};     ///< Written.
    FileLayer::Handle file = -1; ///< -1: none is open.
};

/// Another file layer with somebody in between who is asked before each operation and told afterwards.
class FilesAround : public FileLayer {
public:
    explicit FilesAround(FileLayer& inner)
        : inner_(&inner) {}

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
    void pause(int milliseconds) override { inner_->pause(milliseconds); }
    std::string boot_id() override { return inner_->boot_id(); }
    std::string self() override { return inner_->self(); }

protected:
    /// An error: the operation is not done and fails with it. Closing and unlocking cannot fail.
    virtual std::optional<IoError> before(const FileOperation& /*operation*/) { return std::nullopt; }
    virtual void after(const FileOperation& /*operation*/, bool /*worked*/) {}
    /// Bytes that this call reads or writes at most, of so many that were asked for.
    [[nodiscard]] virtual std::size_t most_at_once(const FileOperation& /*operation*/,
                                                   std::size_t asked) const {
        return asked;
    }
    [[nodiscard]] FileLayer& inner() { return *inner_; }

private:
    template <class Do>
    auto ask(const FileOperation& operation, Do&& what) -> decltype(what());
    [[nodiscard]] FileOperation on(Handle file, std::string name) const;

    FileLayer* inner_;
    std::map<Handle, std::string> paths_;
};

} // namespace sumpbook::store
