// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/usage/riders.h"

#include <cstddef>
#include <optional>
#include <vector>

namespace sumpbook::usage {

/// How far a bike will go, as a mixture of riders (numbers.md 3.6). Days are counted from an origin, the day
/// of the last reading (without one: today), and may be fractions; distances are from the reading there.
class DistanceForecast {
public:
    DistanceForecast(Riders riders, RidingDays riding, const Date& origin);

    /// P(D <= x) for the distance ridden between two days after the origin.
    [[nodiscard]] double chance_at_most(double from_day, double to_day, double distance_km) const;
    /// The distance not passed with chance p, to 1e-6 km.
    [[nodiscard]] double distance_quantile_km(double from_day, double to_day, double p) const;
    [[nodiscard]] double mean_distance_km(double from_day, double to_day) const;
    /// Days after the origin by which the distance is reached with chance p, to 0.001 day; absent: not within
    /// 60 years. A distance of 0 or less is reached at once.
    [[nodiscard]] std::optional<double> days_to_reach(double distance_km, double p) const;
    /// P(T <= t): the chance that the distance is reached by then.
    [[nodiscard]] double chance_reached(double distance_km, double by_day) const;

    [[nodiscard]] const Riders& riders() const { return riders_; }

private:
    /// Operating days of each clock from the origin to a day, linear inside a day.
    [[nodiscard]] double operating_days(std::size_t clock, double to_day) const;
    void reckon_to(std::size_t day) const;
    /// kappa S / 365.25 of each rider.
    [[nodiscard]] std::vector<double> shapes(double from_day, double to_day) const;
    [[nodiscard]] double chance_at_most(const std::vector<double>& shapes, double distance_km) const;

    Riders riders_;
    RidingDays riding_;
    Date origin_;
    std::vector<std::size_t> clocks_used_;
    /// Per clock used, operating days up to the end of each day; grown as far as it is asked for.
    mutable std::vector<std::vector<double>> operating_;
};

} // namespace sumpbook::usage
