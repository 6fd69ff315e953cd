// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "tests/model/store/store_operations.h"

#include <string>
#include <vector>

namespace sumpbook::store {

/// Lets file operation N fail for N = 1, 2, ... until the operation no longer meets the failure, for every
/// kind of failure, once and from then on, and keeps what went wrong.
struct FaultLoop {
    int points = 0;                 ///< Failures met.
    int errors = 0;                 ///< Of them, told as an error.
    int doubts = 0;                 ///< Of them, syncs of the garage file that said no.
    int restarts = 0;               ///< Disks looked at after a restart of the machine.
    int unconfirmed = 0;            ///< Of the errors, those that say it is done and not confirmed.
    int removed = 0;                ///< Disks on which a file was gone that the operation removes.
    std::vector<std::string> wrong; ///< Which point, and what was wrong with it; the first few.

    void run(const StoreOperation& operation);
    /// "fault loop, NAME: 12 fault points, ..."
    [[nodiscard]] std::string text(const StoreOperation& operation) const;
};

} // namespace sumpbook::store
