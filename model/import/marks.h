// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/import/columns.h"
#include "model/import/layout.h"

#include <cstddef>
#include <optional>
#include <set>
#include <string>
#include <vector>

namespace sumpbook::import {

/// How the cells of a file speak for one of two readings.
struct Votes {
    std::size_t first = 0;     ///< Cells that only the first reading allows: 12.5, 25/12/2024.
    std::size_t second = 0;    ///< Cells that only the second allows: 12,5, 12/25/2024.
    std::size_t ambiguous = 0; ///< Cells that mean something else under each: 1.234, 03/04/2024.
    std::optional<std::size_t> first_line, second_line, ambiguous_line; ///< Where each stands first.
    std::string ambiguous_text;
};

/// The decimal mark and date order of a whole file.
struct Marks {
    DecimalMark decimal = DecimalMark::unknown; ///< unknown: no cell needs it.
    DateOrder order = DateOrder::unknown;       ///< unknown: no cell needs it.
    bool decimal_stated = false;                ///< The owner decided.
    bool order_stated = false;
    Votes decimal_votes; ///< first: point, second: comma.
    Votes order_votes;   ///< first: day first, second: month first.
    /// Columns in which nearly all numbers have decimals; there 1.859 among 1,859 is not one thousand.
    std::set<std::size_t> columns_with_decimals;
    std::vector<Question> questions;
};

/// Looks at every cell of the numeric and date columns. One certain cell is enough where none contradicts
/// it; where both occur, ten times as many as of the other decide (the others become doubts) and anything
/// closer is asked; only ambiguous cells are asked too. DESIGN.
[[nodiscard]] Marks find_marks(const Table& table, const Columns& columns, const ImportOptions& options);

/// The date in a cell: a time of day behind it ("2024-05-01 14:30", "...T14:30:00Z") is left out.
[[nodiscard]] std::string_view date_part(std::string_view cell);

} // namespace sumpbook::import
