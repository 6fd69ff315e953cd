// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/model/store/order_watcher.h"

#include <algorithm>

namespace sumpbook::store {
namespace {

constexpr std::string_view lock_ending = ".lock";

bool is_record(const std::string& path) { return !path.ends_with(lock_ending) && !path.ends_with(".chains"); }
/// Of a name that the program itself makes for a while.
bool is_side_file(const std::string& path) {
    return path.find(".new-") != std::string::npos || path.find(".cut-") != std::string::npos;
}

} // namespace

std::vector<std::string> OrderWatcher::not_safe() const {
    std::vector<std::string> all(unsynced_.begin(), unsynced_.end());
    all.insert(all.end(), unsynced_folders_.begin(), unsynced_folders_.end());
    return all;
}

std::optional<IoError> OrderWatcher::before(const FileOperation& operation) {
    if (operation.name == "open" && !inner().identity(operation.path)) new_names_.insert(operation.path);
    return std::nullopt;
}

void OrderWatcher::after(const FileOperation& operation, bool worked) {
    const auto& name = operation.name;
    if (name == "unlock" || name == "close") return let_go(operation);
    if (!worked) return;
    if (name == "open" && new_names_.erase(operation.path) != 0 && is_record(operation.path))
        unsynced_folders_.insert(folder_of(operation.path));
    if (name == "lock" && operation.path.ends_with(lock_ending))
        locked_[operation.file] = operation.path.substr(0, operation.path.size() - lock_ending.size());
    if (name == "write" || name == "truncate") changed(operation);
    if (name == "rename" || name == "remove") renamed(operation);
    if (name == "sync") unsynced_.erase(operation.path);
    if (name == "sync folder") unsynced_folders_.erase(operation.path);
    if (name.starts_with("sync")) ++syncs_;
}

void OrderWatcher::changed(const FileOperation& operation) {
    const auto& path = operation.path;
    if (!is_record(path)) return;
    const bool locked = std::ranges::any_of(locked_, [&](const auto& lock) { return lock.second == path; });
    if (!locked && !is_side_file(path)) faults_.push_back(path + " was changed without its lock");
    if (operation.name == "truncate") {
        for (const auto& other : unsynced_) {
            if (other != path && other.starts_with(path))
                faults_.push_back(path + " was cut before " + other + " was synced");
        }
        if (unsynced_folders_.contains(folder_of(path)))
            faults_.push_back(path + " was cut before its folder was synced");
    }
    unsynced_.insert(path);
}

void OrderWatcher::renamed(const FileOperation& operation) {
    if (!is_record(operation.path)) return;
    if (unsynced_.erase(operation.path) != 0 && operation.name == "rename")
        faults_.push_back(operation.to + " got its name before it was synced");
    unsynced_folders_.insert(folder_of(operation.path));
}

void OrderWatcher::let_go(const FileOperation& operation) {
    const auto lock = locked_.find(operation.file);
    if (lock == locked_.end()) return;
    if (unsynced_.contains(lock->second))
        faults_.push_back("the lock of " + lock->second + " was let go of before the file was synced");
    locked_.erase(lock);
}

} // namespace sumpbook::store
