// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/settings.h"

#include <string_view>

namespace sumpbook::cost {

/// How fast prices rise where the owner has not said so: 3 % a year. DESIGN (numbers.md 5.5).
inline constexpr int usual_drift_percent = 3;

/// Per cent a year of a category; of a branch ("bike/fuel") its own, else that of the category it ends in.
[[nodiscard]] double drift_percent_a_year(const GarageSettings& settings, std::string_view category);

/// What a price becomes in so many days: (1 + r)^t with t in years of 365.25 days; below 0: what it was.
/// A drift of -100 % and less makes everything free.
[[nodiscard]] double price_factor(double percent_a_year, double days);

} // namespace sumpbook::cost
