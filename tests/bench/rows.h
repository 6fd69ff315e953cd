// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/record.h"
#include "model/store/frame.h"

#include <cstdint>
#include <optional>
#include <string>

namespace sumpbook::bench {

/// One invented stop for fuel: what stands in a row of the database and in an entry of the garage file.
struct Row {
    std::int64_t bike = 0; ///< 0 to 2
    std::int64_t recorded = 0;
    std::int64_t day = 0; ///< Since 1970.
    std::int64_t odometer = 0;
    std::string odometer_unit;
    std::int64_t millilitres = 0;
    std::string volume_unit;
    std::int64_t full = 0;
    std::int64_t missed_before = 0;
    std::optional<std::int64_t> octane; ///< Noted at every second stop.
    std::int64_t paid = 0;              ///< Cents.
    std::string currency;
    std::string note;
};
inline constexpr int columns = 13;

/// The same for the same number, counted from 0.
[[nodiscard]] Row row_of(std::size_t number);
[[nodiscard]] Record record_of(const Row& row);
[[nodiscard]] SubjectId bike_of(const Row& row);

/// Writes `rows` rows in actions of `batch` entries, each bike a frame of its own, over any file that stands
/// there. Returns its bytes. Ends the program when the disk does not take it.
std::uint64_t write_garage_file(const std::string& path, std::size_t rows, std::size_t batch);
/// The same rows as a table with one column each, indexed by its row number alone. Returns its bytes.
std::uint64_t write_database(const std::string& path, std::size_t rows);

/// With a sentence on standard error.
[[noreturn]] void give_up(const std::string& why);

} // namespace sumpbook::bench
