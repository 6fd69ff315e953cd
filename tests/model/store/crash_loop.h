// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "tests/model/store/store_operations.h"

#include <functional>
#include <string>
#include <vector>

namespace sumpbook::store {

/// A disk that tells after each operation that changes it: the moment at which a program may die.
class CrashingFiles final : public FilesAround {
public:
    /// `most_written`: bytes that one write takes at most.
    CrashingFiles(MemoryDisk& disk, std::size_t most_written,
                  std::function<void(const FileOperation&)> moment)
        : FilesAround(disk)
        , most_written_(most_written)
        , moment_(std::move(moment)) {}

protected:
    void after(const FileOperation& operation, bool worked) override;
    [[nodiscard]] std::size_t most_at_once(const FileOperation& operation, std::size_t asked) const override;

private:
    std::size_t most_written_;
    std::function<void(const FileOperation&)> moment_;
};

/// Does things with a disk. After every file operation the program dies or the power goes, and what is found
/// then is looked at.
class CrashLoop {
public:
    virtual ~CrashLoop() = default;
    CrashLoop(const CrashLoop&) = delete;
    CrashLoop& operator=(const CrashLoop&) = delete;

    int moments = 0;                ///< File operations after which somebody died.
    int images = 0;                 ///< Disks looked at.
    int with_new = 0, with_old = 0; ///< Of them, with and without what was under way.
    std::vector<std::string> wrong; ///< The first few.

protected:
    /// `seeds`: power cuts tried at each moment and of each kind.
    CrashLoop(const MemoryDisk& disk, std::uint64_t seeds)
        : disk_(disk)
        , seeds_(seeds) {}

    using Work = std::function<Result<void>(FileLayer&)>;
    /// Does it, with every moment of it looked at; `path` is the file that it writes.
    void attempt(const std::string& name, const std::string& path, const Work& what,
                 std::size_t most_written = SIZE_MAX);
    /// One disk as it may be found.
    virtual void look(MemoryDisk disk, bool in_order) = 0;
    void complain(const std::string& what);
    /// True, and counted, where the state is one of the two that may be.
    bool is_whole(const std::string& found);
    /// The next save to the file works, and nothing else has changed.
    void goes_on(MemoryDisk& disk, const std::string& path, const std::string& found);

    MemoryDisk disk_;
    std::string acknowledged_ = "no file"; ///< As state_text.
    std::string under_way_;

private:
    void moment(const FileOperation& operation);

    std::uint64_t seeds_;
    std::uint64_t seed_ = 2;
    std::string where_;
};

/// Saves one thing after another: everything acknowledged is there, the save under way whole or not at all,
/// and the next save works.
class CrashingSaves final : public CrashLoop {
public:
    explicit CrashingSaves(std::uint64_t seeds)
        : CrashLoop(empty_disk(), seeds) {}

    /// Creates, saves single entries, several bikes at once, attachments and a fingerprint, and erases; then
    /// dies in the middle of a save and goes on behind its torn end.
    void run();

    /// Disks whose last action is as long as it should be and not right. Only a disk that writes in any order
    /// leaves them; they are not opened until the owner says so, since only he knows whether it was reported.
    /// Recovering gives everything acknowledged in a new file.
    int not_right = 0;
    int recovered = 0; ///< Of them.

private:
    void save(const std::string& name, const Work& what);
    void save_records(const std::string& name, int first, int count, std::size_t attachment_bytes = 0);
    void look(MemoryDisk disk, bool in_order) override;
    void look_at_damaged(MemoryDisk& disk);
    void recover(MemoryDisk& disk);

    std::size_t acknowledged_bytes_ = 0;
};

/// Makes one file out of others: that file is absent or whole, the others are as they were, and nothing else
/// is left that looks like a garage file. Doing it again works where the file is absent.
class CrashingMaker final : public CrashLoop {
public:
    CrashingMaker(const StoreOperation& operation, std::uint64_t seeds)
        : CrashLoop(operation.before, seeds)
        , operation_(operation) {}

    /// In small writes, so that there are several to lose and to reorder.
    void run() { attempt(operation_.name, operation_.path, operation_.run, 300); }

    int removed = 0;   ///< Disks on which a file was gone that the operation removes.
    int temporary = 0; ///< Disks with a file under a temporary name.

private:
    void look(MemoryDisk disk, bool in_order) override;
    void look_beside(const MemoryDisk& disk, bool is_new);
    void look_at_new_names(const MemoryDisk& disk);

    const StoreOperation& operation_;
};

} // namespace sumpbook::store
