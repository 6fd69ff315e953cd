// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "reports/document/document.h"

#include <compare>
#include <string>
#include <string_view>

namespace sumpbook::window {

/// What the rows of a table are put in order by: cells that say how much they matter by that, worst first;
/// then days and numbers by their size; then words; cells with nothing in them last.
struct SortKey {
    int rank = 0; ///< Of the kind of cell, in the order above.
    double number_in_unit_of_cell = 0;
    std::string words; ///< ASCII letters in lower case.
    [[nodiscard]] std::partial_ordering operator<=>(const SortKey&) const = default;
};

[[nodiscard]] SortKey sort_key(const document::Cell& cell);

/// "48 210 km" -> 48210, "about 3 May 2026" -> its day, "in 12 days" -> 12, "< 2 mg/kg" -> just below 2.
/// False where the text does not begin with a day or a number, lead words aside.
[[nodiscard]] bool leading_number(std::string_view text, double& number);

} // namespace sumpbook::window
