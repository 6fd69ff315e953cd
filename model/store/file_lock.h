// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/store/file_layer.h"

#include <optional>
#include <utility>

namespace sumpbook::store {

/// How long to wait for a lock before saying who holds it.
struct Patience {
    int milliseconds = 5000;
};

/// A failed sync that was noted beside the file: bytes from `from` on may not be on the disk, whatever
/// they read as. The doubt ends with a restart of the machine, when reading no longer comes from memory, or
/// when another file takes the place of this one.
struct Suspicion {
    std::uint64_t from = 0;
    std::string boot_id;
    FileIdentity file;
};

/// The lock on a file, taken on FILE.lock beside it: the file itself may be replaced by renaming. The lock
/// file is never removed. While the lock is exclusive it says who holds it.
class FileLock {
public:
    /// Problem `locked` with the holder when the patience ends. A reader goes on without a lock where
    /// no lock file can be had: a read-only folder.
    [[nodiscard]] static Result<FileLock> take(FileLayer& layer, const std::string& path, LockKind kind,
                                               Patience patience);
    FileLock(FileLock&& other) noexcept
        : file_(std::exchange(other.file_, std::nullopt)) // only one of the two lets go
        , kind_(other.kind_)
        , suspicion_(std::move(other.suspicion_)) {}
    FileLock& operator=(FileLock&&) = delete;
    ~FileLock();

    /// What an earlier failed sync left behind, whatever has happened since.
    [[nodiscard]] const std::optional<Suspicion>& suspicion() const { return suspicion_; }
    /// Exclusive only: best effort, for the programs that come later.
    void note_suspicion(const Suspicion& suspicion);
    void clear_suspicion();

private:
    FileLock(std::optional<OpenFile> file, LockKind kind)
        : file_(std::move(file))
        , kind_(kind) {}
    void write(const std::string& text);

    std::optional<OpenFile> file_;
    LockKind kind_;
    std::optional<Suspicion> suspicion_;
};

} // namespace sumpbook::store
