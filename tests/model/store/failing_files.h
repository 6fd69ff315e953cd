// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/store/posix_file_layer.h"
#include "tests/model/store/files_around.h"
#include "tests/model/store/memory_disk.h"

#include <set>
#include <string>

namespace sumpbook::store {

/// Files whose operations fail where a test wants, real ones or those of a disk in memory. Operations are
/// counted from 1; closing, unlocking and waiting cannot fail and are not counted. A sync that fails on a
/// disk in memory loses what it was to make safe.
class FailingFiles final : public FilesAround {
public:
    struct Plan {
        int fail_at = 0;           ///< 0: never.
        bool from_then_on = false; ///< Else only that one.
        IoFault fault = IoFault::other;
        int code = 5;                        ///< EIO
        bool interrupt_first = false;        ///< Every read, write, open and lock is interrupted once.
        std::size_t most_at_once = SIZE_MAX; ///< Bytes read or written by one call.
        std::string only; ///< Operations of this name alone count and fail: "sync", "write", ...
        /// Operation `fail_at`, if it is a write, does only the first half; the one after it is what fails.
        bool half_before = false;
        /// What all operations of whatever name fail with once one failed.
        std::optional<IoError> then_all = {};
    };

    explicit FailingFiles(Plan plan)
        : FilesAround(real_)
        , plan_(std::move(plan)) {}
    FailingFiles(Plan plan, MemoryDisk& disk)
        : FilesAround(disk)
        , boot(disk.boot)
        , disk_(&disk)
        , plan_(std::move(plan)) {}
    FailingFiles(const FailingFiles&) = delete;
    [[nodiscard]] int operations() const { return count_; }
    [[nodiscard]] int failures() const { return failures_; }
    /// The first operation that failed; the bytes it was about are gone.
    [[nodiscard]] const FileOperation& first_failed() const { return first_failed_; }

    void pause(int /*milliseconds*/) override {}
    std::string boot_id() override { return boot; }

    std::string boot = "this-start";

private:
    std::optional<IoError> before(const FileOperation& operation) override;
    [[nodiscard]] std::size_t most_at_once(const FileOperation& operation, std::size_t asked) const override;
    [[nodiscard]] IoError fail(const FileOperation& operation, const IoError& error);
    bool interrupted(const std::string& name);

    PosixFileLayer real_;
    MemoryDisk* disk_ = nullptr;
    Plan plan_;
    int count_ = 0;
    int failures_ = 0;
    FileOperation first_failed_;
    std::set<std::string> interrupted_now_;
};

} // namespace sumpbook::store
