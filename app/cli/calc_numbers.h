// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/quantity/number_text.h"

#include <string>

namespace sumpbook::cli {

/// A number typed for a calculator. Nothing is stored and the answer repeats it, so 12.499 is taken for the
/// plain form with a decimal point unless --decimal says otherwise; everything else as in `read_number`.
[[nodiscard]] Result<Decimal> calc_number(const std::string& field, const std::string& text,
                                          DecimalMark mark);
/// The same, refused unless it is above 0.
[[nodiscard]] Result<Decimal> calc_number_above_0(const std::string& field, const std::string& text,
                                                  DecimalMark mark);

struct CalcAmount {
    Decimal number;
    std::string unit; ///< As typed; may be empty.
};
/// "12.499 L" in the same way.
[[nodiscard]] Result<CalcAmount> calc_number_and_unit(const std::string& text, DecimalMark mark);

/// "60", "60 C" or "140F" in degrees Celsius.
[[nodiscard]] Result<double> calc_celsius(const std::string& field, const std::string& text,
                                          DecimalMark mark);

} // namespace sumpbook::cli
