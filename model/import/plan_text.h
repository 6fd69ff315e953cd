// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/import/plan.h"

#include <string>
#include <vector>

namespace sumpbook::import {

// What an import would do, for the owner, in lines of text without line breaks. Text of cells is shown as
// typed, with line breaks and other control characters as blanks.

/// Encoding, separator, marks, dates and each column with its field and unit.
[[nodiscard]] std::vector<std::string> layout_lines(const ImportPlan& plan);
/// "line 7, column "Odometer", "12x45": expected ...".
[[nodiscard]] std::string doubt_line(const Doubt& doubt);
[[nodiscard]] std::vector<std::string> doubt_lines(const ImportPlan& plan);
[[nodiscard]] std::vector<std::string> duplicate_lines(const ImportPlan& plan);
[[nodiscard]] std::vector<std::string> kept_out_lines(const ImportPlan& plan);
[[nodiscard]] std::vector<std::string> question_lines(const ImportPlan& plan);
/// "line 3: 2024-05-01 fuel 12345 km, 10.50 L, ...": one line for each entry to be added.
[[nodiscard]] std::vector<std::string> entry_lines(const ImportPlan& plan);
/// "40 rows: 38 entries to add, 3 doubts, 1 duplicate, 1 row kept out."
[[nodiscard]] std::string count_line(const ImportPlan& plan);

} // namespace sumpbook::import
