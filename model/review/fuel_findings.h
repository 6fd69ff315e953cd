// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/garage.h"
#include "model/review/finding.h"

#include <vector>

namespace sumpbook::review {

/// From so many on the median of a bike's own figures says what is usual for it. DESIGN.
inline constexpr std::size_t fewest_to_compare = 5;
/// More than so many times the median, or less than the median divided by it, is far outside. Load, cold and
/// short rides move consumption, and years move prices, by less. DESIGN.
inline constexpr double far_outside_factor = 3;

/// Stretches between full fills whose consumption, and fills whose price of a litre, are far outside the
/// bike's own: a slip in the reading, the volume or the total, or a fill that was not recorded. Prices are
/// compared within one currency; the price typed counts, else the total over the volume. Void stretches are
/// left out. Empty where there are fewer than `fewest_to_compare`.
[[nodiscard]] std::vector<Finding> fuel_findings(const Bike& bike);

} // namespace sumpbook::review
