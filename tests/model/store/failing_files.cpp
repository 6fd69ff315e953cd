// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/model/store/failing_files.h"

#include <algorithm>

namespace sumpbook::store {

std::optional<IoError> FailingFiles::before(const FileOperation& operation) {
    if (failures_ > 0 && plan_.then_all) return fail(operation, *plan_.then_all);
    if (!plan_.only.empty() && operation.name != plan_.only) return std::nullopt;
    if (plan_.interrupt_first && interrupted(operation.name)) return IoError{IoFault::interrupted, 4};
    ++count_;
    const int fail_at = plan_.fail_at + (plan_.half_before ? 1 : 0);
    if (plan_.fail_at == 0 || count_ < fail_at || (count_ > fail_at && !plan_.from_then_on))
        return std::nullopt;
    return fail(operation, {plan_.fault, plan_.code});
}

IoError FailingFiles::fail(const FileOperation& operation, const IoError& error) {
    if (++failures_ == 1) first_failed_ = {operation.name, operation.path, operation.to, operation.at};
    if (operation.name == "sync" && disk_ != nullptr) disk_->sync_failed(operation.file);
    return error;
}

/// Asked before the operation is counted.
std::size_t FailingFiles::most_at_once(const FileOperation& operation, std::size_t asked) const {
    const bool half = plan_.half_before && operation.name == "write" && count_ + 1 == plan_.fail_at;
    return std::min(plan_.most_at_once, half ? (asked + 1) / 2 : asked);
}

/// True every second time, for the operations that a signal can interrupt and that may be repeated.
bool FailingFiles::interrupted(const std::string& name) {
    if (name != "open" && name != "read" && name != "write" && name != "lock") return false;
    if (interrupted_now_.erase(name) != 0) return false;
    interrupted_now_.insert(name);
    return true;
}

} // namespace sumpbook::store
