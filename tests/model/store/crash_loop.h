// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "tests/model/store/disk_bench.h"

#include <functional>
#include <string>
#include <vector>

namespace sumpbook::store {

/// A disk that tells after each operation that changes it: the moment at which a program may die.
class CrashingFiles final : public FilesAround {
public:
    CrashingFiles(MemoryDisk& disk, std::function<void(const FileOperation&)> moment)
        : FilesAround(disk)
        , moment_(std::move(moment)) {}

protected:
    void after(const FileOperation& operation, bool worked) override;

private:
    std::function<void(const FileOperation&)> moment_;
};

/// Saves one thing after another. After every file operation the program dies or the power goes, and what is
/// found then is looked at: everything acknowledged is there, the save under way whole or not at all, and the
/// next save works.
class CrashLoop {
public:
    /// `seeds`: power cuts tried at each moment and of each kind.
    explicit CrashLoop(std::uint64_t seeds)
        : disk_(empty_disk())
        , seeds_(seeds) {}

    /// Creates, saves single entries, several bikes at once, attachments and a fingerprint, and erases; then
    /// dies in the middle of a save and goes on behind its torn end.
    void run();

    int moments = 0;                ///< File operations after which somebody died.
    int images = 0;                 ///< Disks looked at.
    int with_new = 0, with_old = 0; ///< Of them, with and without the save under way.
    /// Disks whose last action is as long as it should be and not right. Only a disk that writes in any order
    /// leaves them; they are not opened until the owner says so, since only he knows whether it was reported.
    int not_right = 0;
    std::vector<std::string> wrong; ///< The first few.

private:
    using Save = std::function<Result<void>(FileLayer&)>;
    void save(const std::string& name, const Save& what);
    void save_records(const std::string& name, int first, int count, std::size_t attachment_bytes = 0);
    void look(MemoryDisk disk, bool in_order);
    void moment(const FileOperation& operation);

    MemoryDisk disk_;
    std::uint64_t seeds_;
    std::uint64_t seed_ = 2;
    std::string acknowledged_ = "no file"; ///< As state_text.
    std::size_t acknowledged_bytes_ = 0;
    std::string under_way_;
    std::string where_;
    FileOperation last_;
};

} // namespace sumpbook::store
