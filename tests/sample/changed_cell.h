// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

namespace sumpbook::sample {

/// Where a cell stands: the line of the file (the heading is line 1) and the heading of its column.
struct CellPlace {
    std::size_t line = 0;
    std::string column;
};

/// The cell's text. Throws std::runtime_error where there is no such line or column. The separator is the
/// semicolon where the heading has one, else the comma; no cell of the example holds a line break.
[[nodiscard]] std::string cell_at(const std::string& csv, const CellPlace& place);

/// The same file with one cell changed, every other byte as it was.
[[nodiscard]] std::string with_cell(const std::string& csv, const CellPlace& place, const std::string& text);

} // namespace sumpbook::sample
