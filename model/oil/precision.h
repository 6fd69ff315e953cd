// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace sumpbook::oil {

/// Two results of one laboratory, or of two, differ by chance by less than this in 19 cases of 20.
struct Precision {
    double repeatability = 0;   ///< One laboratory.
    double reproducibility = 0; ///< Two laboratories.
};

/// Of an element at a value, both in mg/kg; the value is moved into the range the method was tested in.
/// Absent for elements without a figure.
///
/// SOURCE: ASTM D5185 Tables 2 and 3, coefficient x X^exponent; coefficients from memory (precision.csv).
[[nodiscard]] std::optional<Precision> element_precision(std::string_view element, double mg_kg);

/// Of the acid number of a used oil, mg KOH/g: 0.117 X and 0.44 X.
/// SOURCE: ASTM D664 sections 14 to 16, used oil, buffer end point (read).
[[nodiscard]] Precision acid_number_precision(double mg_koh_g);

/// Of the base number, mg KOH/g, by its method (see method_of); absent without a figure for the method.
/// SOURCE: ASTM D5984 (colour-indicator field kit), r 0.94 and R 1.91 (read).
[[nodiscard]] std::optional<Precision> base_number_precision(const std::optional<std::string>& method);

} // namespace sumpbook::oil
