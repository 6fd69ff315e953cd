// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "tests/model/store/files_around.h"

#include <map>
#include <set>
#include <string>
#include <vector>

namespace sumpbook::store {

/// Watches in which order a program writes, syncs, renames, locks and lets go, and keeps every step out of
/// order. Lock files and notes (.lock, .chains) are no records and may be written at any time.
class OrderWatcher final : public FilesAround {
public:
    using FilesAround::FilesAround;

    /// What was done too early, in words:
    ///   a file got its name before it was synced; a file was written or cut without its lock, or while
    ///   another file in its folder that was made from it was not safe; a lock was let go of while the file
    ///   was not synced.
    [[nodiscard]] const std::vector<std::string>& faults() const { return faults_; }
    /// Files and folders that are not safe yet. Empty at the moment when success is reported.
    [[nodiscard]] std::vector<std::string> not_safe() const;
    [[nodiscard]] int syncs() const { return syncs_; }

protected:
    std::optional<IoError> before(const FileOperation& operation) override;
    void after(const FileOperation& operation, bool worked) override;

private:
    void changed(const FileOperation& operation);
    void renamed(const FileOperation& operation);
    void let_go(const FileOperation& operation);

    std::set<std::string> unsynced_, unsynced_folders_, new_names_;
    std::map<Handle, std::string> locked_; ///< What it locks: the name without .lock.
    std::vector<std::string> faults_;
    int syncs_ = 0;
};

} // namespace sumpbook::store
