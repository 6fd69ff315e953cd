// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/model/store/failing_files.h"

namespace sumpbook::store {

std::optional<IoError> FailingFiles::before(const FileOperation& operation) {
    if (!plan_.only.empty() && operation.name != plan_.only) return std::nullopt;
    if (plan_.interrupt_first && interrupted(operation.name)) return IoError{IoFault::interrupted, 4};
    ++count_;
    if (plan_.fail_at == 0 || count_ < plan_.fail_at || (count_ > plan_.fail_at && !plan_.from_then_on))
        return std::nullopt;
    if (++failures_ == 1) first_failed_ = {operation.name, operation.path, operation.to, operation.at};
    if (operation.name == "sync" && disk_ != nullptr) disk_->sync_failed(operation.file);
    return IoError{plan_.fault, plan_.code};
}

/// True every second time, for the operations that a signal can interrupt and that may be repeated.
bool FailingFiles::interrupted(const std::string& name) {
    if (name != "open" && name != "read" && name != "write" && name != "lock") return false;
    if (interrupted_now_.erase(name) != 0) return false;
    interrupted_now_.insert(name);
    return true;
}

} // namespace sumpbook::store
