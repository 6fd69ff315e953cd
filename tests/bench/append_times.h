// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

namespace sumpbook::bench {

/// Microseconds of each of the times one entry was saved durably, three ways in turn.
struct AppendTimes {
    std::vector<double> plain;    ///< Write and fdatasync of as many bytes at the end of a file.
    std::vector<double> garage;   ///< GarageFile::append: returned when it is on the disk.
    std::vector<double> database; ///< SQLite, write-ahead log, synchronous FULL, one row a transaction.
};
[[nodiscard]] AppendTimes append_in_turn(const std::string& folder, int times);

} // namespace sumpbook::bench
