// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/store/posix_file_layer.h"

#include <set>
#include <string>

namespace sumpbook::store {

/// Real files whose operations fail where a test wants. Operations are counted from 1; closing, unlocking
/// and waiting cannot fail and are not counted.
class FailingFiles final : public FileLayer {
public:
    struct Plan {
        int fail_at = 0;           ///< 0: never.
        bool from_then_on = false; ///< Else only that one.
        IoFault fault = IoFault::other;
        int code = 5;                        ///< EIO
        bool interrupt_first = false;        ///< Every read, write, open and sync is interrupted once.
        std::size_t most_at_once = SIZE_MAX; ///< Bytes read or written by one call.
        std::string only; ///< Operations of this name alone count and fail: "sync", "write", ...
    };

    explicit FailingFiles(Plan plan)
        : plan_(std::move(plan)) {}
    [[nodiscard]] int operations() const { return count_; }
    [[nodiscard]] int failures() const { return failures_; }

    Io<Handle> open(const std::string& path, OpenMode mode) override;
    void close(Handle file) override { real_.close(file); }
    Io<std::size_t> read(Handle file, std::uint64_t at, std::span<std::uint8_t> into) override;
    Io<std::size_t> write(Handle file, std::uint64_t at, ByteView bytes) override;
    Io<void> sync(Handle file) override;
    Io<void> truncate(Handle file, std::uint64_t size) override;
    Io<std::uint64_t> size(Handle file) override;
    Io<FileIdentity> identity(Handle file) override;
    Io<FileIdentity> identity(const std::string& path) override;
    Io<void> rename(const std::string& from, const std::string& to) override;
    Io<void> rename_new(const std::string& from, const std::string& to) override;
    Io<void> remove(const std::string& path) override;
    Io<void> sync_folder(const std::string& folder) override;
    Io<void> make_folders(const std::string& folder) override;
    Io<std::vector<std::string>> list(const std::string& folder) override;
    Io<std::uint32_t> mode(Handle file) override;
    Io<void> set_mode(Handle file, std::uint32_t mode) override;
    Io<bool> try_lock(Handle file, LockKind kind) override;
    void unlock(Handle file) override { real_.unlock(file); }
    void pause(int /*milliseconds*/) override {}
    std::string boot_id() override { return boot; }
    std::string self() override { return real_.self(); }

    std::string boot = "this-start";

private:
    /// The failure this operation meets, if any.
    std::optional<IoError> next(const std::string& name);
    bool interrupted(const std::string& name);

    PosixFileLayer real_;
    Plan plan_;
    int count_ = 0;
    int failures_ = 0;
    std::set<std::string> interrupted_now_;
};

} // namespace sumpbook::store
