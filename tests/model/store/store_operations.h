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
    /// What is looked at afterwards: the file that the operation writes. All others stay as they are.
    std::string path = garage_path;
    /// But for these, which go once that file is there.
    std::vector<std::string> removes = {};
    /// What its sentence says where it is done and the disk did not confirm it; empty: it never says so.
    std::string unconfirmed = {};
    /// Texts that are nowhere on the disk any more once it is done.
    std::vector<std::string> erases = {};
};

[[nodiscard]] StoreOperation create_operation();
[[nodiscard]] StoreOperation append_operation();
[[nodiscard]] StoreOperation append_twice_operation();
[[nodiscard]] StoreOperation append_attachment_operation();
[[nodiscard]] StoreOperation take_fingerprint_operation();
/// The last save had been cut short.
[[nodiscard]] StoreOperation append_behind_torn_operation();

// Each makes one file out of others.
[[nodiscard]] StoreOperation merge_operation();
/// Of a garage with a changed byte in its middle.
[[nodiscard]] StoreOperation recover_operation();
/// Without money.
[[nodiscard]] StoreOperation hand_over_operation();
/// In the place of three older backups.
[[nodiscard]] StoreOperation back_up_operation();

} // namespace sumpbook::store
