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
    std::string
        boot_id; ///< Of the start of the machine it belongs to; note_suspicion writes the present one.
    FileIdentity file;
    bool whole = true; ///< False: the note was cut short, and place and file are not known.
};

/// The lock on a file, taken on FILE.lock beside it: the file itself may be replaced by renaming. The lock
/// file is never removed. It says who held it exclusively last, and so, while somebody does, who that is.
/// `path` is the name of the file itself (FileLayer::real_path): a link has another name and another lock.
class FileLock {
public:
    /// Problem `locked` with the holder when the patience ends. A reader goes on without a lock where
    /// no lock file can be had: a read-only folder. A writer is refused where FILE.lock is a link, or a file
    /// of another kind: it would be written over. `keep`: where a writer that comes again finds the open
    /// lock file from last time, and leaves it; it must outlive the lock.
    [[nodiscard]] static Result<FileLock> take(FileLayer& layer, const std::string& path, LockKind kind,
                                               Patience patience, std::optional<OpenFile>* keep = nullptr);
    FileLock(FileLock&& other) noexcept
        : file_(std::exchange(other.file_, std::nullopt)) // only one of the two lets go
        , keep_(other.keep_)
        , suspicion_(std::move(other.suspicion_)) {}
    FileLock& operator=(FileLock&&) = delete;
    ~FileLock();

    /// What an earlier failed sync left behind, whatever has happened since.
    [[nodiscard]] const std::optional<Suspicion>& suspicion() const { return suspicion_; }
    /// Exclusive only: best effort, for the programs that come later.
    void note_suspicion(const Suspicion& suspicion);
    void clear_suspicion();

private:
    FileLock(std::optional<OpenFile> file, std::optional<OpenFile>* keep)
        : file_(std::move(file))
        , keep_(keep) {}
    void write(const std::string& text);

    std::optional<OpenFile> file_;
    std::optional<OpenFile>* keep_;
    std::optional<Suspicion> suspicion_;
};

/// A file open for reading, and the shared lock on it.
struct LockedFile {
    OpenFile file;
    FileLock lock;
};
/// The file that stands at `path`, which is the name of the file itself, while the lock is held. Problems: io,
/// locked.
[[nodiscard]] Result<LockedFile> open_locked(FileLayer& layer, const std::string& path, Patience patience);

} // namespace sumpbook::store
