// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/quantity/number_text.h"

#include <string>
#include <string_view>
#include <vector>

namespace sumpbook::cli {

/// Paired values of a table with the columns x and y, in the order of the rows.
struct PairedColumns {
    std::vector<double> xs;
    std::vector<double> ys;
};

/// Reads a CSV text whose heading names the columns x and y, among others or alone, separated by comma,
/// semicolon or tab. In a table with commas the decimal mark is a point; else `mark`. A row whose x or y is
/// no number is refused with its line: nothing is left out silently.
[[nodiscard]] Result<PairedColumns> read_paired_columns(std::string_view csv, const std::string& file,
                                                        DecimalMark mark);

} // namespace sumpbook::cli
