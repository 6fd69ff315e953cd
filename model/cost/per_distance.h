// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/cost/spent.h"
#include "model/usage/odometer.h"

#include <optional>

namespace sumpbook::cost {

/// What running a bike cost over a stretch of road.
struct CostOfDistance {
    Money running; ///< Spent on the days covered, without buying and selling the bike.
    Distance distance;
    Date from;
    Date to;
    double minor_per_km = 0; ///< Minor units of `running` for one kilometre.
    bool operator==(const CostOfDistance&) const = default;
};

/// Money and distance of the same days: from..to, cut to what the odometer's record covers. Absent where no
/// distance is covered, and where money of those days stands in several currencies.
[[nodiscard]] std::optional<CostOfDistance> cost_of_distance(const std::vector<Spending>& spending,
                                                             const usage::OdometerSeries& odometer,
                                                             const Date& from, const Date& to);

} // namespace sumpbook::cost
