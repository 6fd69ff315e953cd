// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "tests/model/store/disk_bench.h"

#include <functional>
#include <string>
#include <vector>

namespace sumpbook::store {

/// One operation of the store and what it starts from.
struct StoreOperation {
    std::string name;
    MemoryDisk before;
    /// Does it, from opening the garage to the answer.
    std::function<Result<void>(FileLayer&)> run;
    /// What is looked at afterwards: the file that the operation writes.
    std::string path = garage_path;
    /// Whether another save to that file is tried afterwards.
    bool goes_on = true;
};

/// Lets file operation N fail for N = 1, 2, ... until the operation no longer meets the failure, for every
/// kind of failure, once and from then on, and keeps what went wrong.
struct FaultLoop {
    int points = 0;                 ///< Failures met.
    int errors = 0;                 ///< Of them, told as an error.
    int doubts = 0;                 ///< Of them, syncs of the garage file that said no.
    int restarts = 0;               ///< Disks looked at after a restart of the machine.
    std::vector<std::string> wrong; ///< Which point, and what was wrong with it; the first few.

    void run(const StoreOperation& operation);
};

} // namespace sumpbook::store
