// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/usage/odometer.h"

#include <optional>

namespace sumpbook::usage {

/// Distance over the whole accepted record divided by its days: no season, no forgetting, no range.
struct PlainRate {
    double km_a_day = 0; ///< 0 or more.
    Date since;          ///< First and last day of the record it rests on.
    Date until;
    Distance distance;
    bool operator==(const PlainRate&) const = default;
};

/// A record shorter than this says nothing about a rate. DESIGN (numbers.md 3.1).
inline constexpr int fewest_days_for_a_rate = 7;

/// Absent where the accepted record is under 7 days long.
[[nodiscard]] std::optional<PlainRate> plain_rate(const OdometerSeries& odometer);

} // namespace sumpbook::usage
