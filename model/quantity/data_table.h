// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/quantity/decimal.h"

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace sumpbook {

/// One row of a data file compiled into the program; cells by the heading's names.
class DataRow {
public:
    explicit DataRow(std::map<std::string, std::string, std::less<>> cells)
        : cells_(std::move(cells)) {}

    /// The cell's text, empty where the file leaves it empty. A name the heading does not have is a fault
    /// of the program: std::logic_error.
    [[nodiscard]] const std::string& operator[](std::string_view column) const;
    /// The cell as a number; absent where the cell is empty. Text that is no number: std::logic_error.
    [[nodiscard]] std::optional<Decimal> number(std::string_view column) const;
    /// The cell as a number it must hold. Empty cell: std::logic_error.
    [[nodiscard]] Decimal required(std::string_view column) const;

private:
    std::map<std::string, std::string, std::less<>> cells_;
};

/// The rows of a compiled-in data file: comma-separated, cells with commas in double quotes, lines that
/// begin with # are remarks, the first other line is the heading. A row with more or fewer cells than the
/// heading is a fault of the program: std::logic_error. For files of owners see `import`.
[[nodiscard]] std::vector<DataRow> read_data_table(std::string_view csv);

} // namespace sumpbook
