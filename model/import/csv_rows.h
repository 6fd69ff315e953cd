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

/// Records above this are refused. DESIGN.
inline constexpr std::size_t most_cells_a_row = 1'000;

/// Memory that a file of so many bytes may take while it is taken apart and planned, by the estimates of the
/// steps: under the 64 times its size and 64 MB that hold for every file, since texts come on top. DESIGN:
/// rows of a use stay far below; 20,000 of the shortest fills fit.
[[nodiscard]] constexpr std::size_t memory_allowed(std::size_t file_bytes) {
    return 56 * file_bytes + 48U * 1024U * 1024U;
}
/// An estimate for one record among many, without long texts.
[[nodiscard]] inline std::size_t memory_of(const Row& row) {
    return 2 * sizeof(Row) + row.cells.capacity() * sizeof(std::string) + 32;
}
/// The refusal of a file that would take more.
[[nodiscard]] tl::unexpected<Problem> too_many_rows(std::size_t line);

/// Text to records by RFC 4180, section 2: quoted cells may hold separators, line breaks and doubled
/// quotes. Beyond the RFC: the separator is given, a line may end in CR LF, LF or CR, and empty lines are
/// left out. A quote that never closes is refused with the line on which it opens. Stops behind `most` records
/// that are not blank.
[[nodiscard]] Result<std::vector<Row>> split_rows(std::string_view text, char separator,
                                                  std::size_t most = static_cast<std::size_t>(-1));

/// True where every cell is empty or blank.
[[nodiscard]] bool is_blank(const Row& row);

} // namespace sumpbook::import
