// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/quantity/problem.h"

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace sumpbook::import {

/// One record of a table: its cells exactly as they stand between the separators, blanks included,
/// doubled quotes made single.
struct Row {
    std::size_t line = 0; ///< Line of the file on which the record starts, from 1.
    std::vector<std::string> cells;
    /// Column numbers (from 0) of cells whose quotes stand where RFC 4180 has none: 5" or "a"b. The text
    /// is kept whole, quotes included.
    std::vector<std::size_t> stray_quotes;
};

/// Records above these are refused, so that no input takes the memory away. DESIGN.
inline constexpr std::size_t most_rows = 1'000'000;
inline constexpr std::size_t most_cells_a_row = 1'000;

/// Text to records by RFC 4180, section 2: quoted cells may hold separators, line breaks and doubled
/// quotes. Beyond the RFC: the separator is given, a line may end in CR LF, LF or CR, and empty lines are
/// left out. A quote that never closes is refused with the line on which it opens.
[[nodiscard]] Result<std::vector<Row>> split_rows(std::string_view text, char separator);

/// True where every cell is empty or blank.
[[nodiscard]] bool is_blank(const Row& row);

} // namespace sumpbook::import
