// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/entry_parts.h"
#include "model/import/column_unit.h"
#include "model/quantity/dates.h"
#include "model/quantity/number_text.h"

#include <cstdint>
#include <string>
#include <string_view>

namespace sumpbook::import {

/// How the cells of one column are read.
struct CellRules {
    DecimalMark mark = DecimalMark::unknown;
    DateOrder order = DateOrder::unknown;
    bool has_decimals = false; ///< Nearly all numbers of the column have decimals.
    ColumnUnit stated;         ///< What the heading or the owner says; a cell that says otherwise is refused.
    ColumnUnit usual;          ///< What is meant where neither heading nor cell says anything.
    Currency garage;           ///< Decides what $ means.
};

// Each takes one cell that is not blank. Refused with a sentence for anything that is not exactly one value;
// nothing is rounded, completed or dropped.

/// A time of day behind the date is left out.
[[nodiscard]] Result<Date> date_in(std::string_view cell, const CellRules& rules);
[[nodiscard]] Result<Decimal> number_in(std::string_view cell, const CellRules& rules);
/// 0 to 4 294 967 295.
[[nodiscard]] Result<std::uint32_t> whole_in(std::string_view cell, const CellRules& rules);
/// 0 or more.
[[nodiscard]] Result<WrittenDistance> distance_in(std::string_view cell, const CellRules& rules);
/// Above 0. Bare gallons are those of the heading.
[[nodiscard]] Result<WrittenVolume> volume_in(std::string_view cell, const CellRules& rules);
/// The currency may stand before or behind. Refused with more decimals than the currency has.
[[nodiscard]] Result<Money> money_in(std::string_view cell, const CellRules& rules);
/// "1.859", "1.859 EUR", "€1.859/L"; 0 or more.
[[nodiscard]] Result<UnitPrice> unit_price_in(std::string_view cell, const CellRules& rules);
[[nodiscard]] Result<bool> yes_no_in(std::string_view cell, std::string_view list = "yes-no");
/// "12", "<2", "< 2 ppm", "detected", "not detected", "nd".
[[nodiscard]] Result<SampleValue> sample_value_in(std::string_view cell, std::string_view quantity,
                                                  const CellRules& rules);

} // namespace sumpbook::import
