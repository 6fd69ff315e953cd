// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/usage/riders.h"

#include <cstddef>
#include <map>
#include <optional>
#include <vector>

namespace sumpbook::usage {

/// Forecasts look no further than this (numbers.md 3.6).
inline constexpr int horizon_days = 60 * 365 + 15;

/// How far a bike will go, as a mixture of riders (numbers.md 3.6). Days are counted from an origin, the day
/// of the last reading (without one: today), and may be fractions; distances are from the reading there.
/// What was worked out is kept for the next question: one thread at a time.
class DistanceForecast {
public:
    DistanceForecast(Riders riders, RidingDays riding, const Date& origin);

    /// P(D <= x) for the distance ridden between two days after the origin.
    [[nodiscard]] double chance_at_most(double from_day, double to_day, double distance_km) const;
    /// The distance not passed with chance p, to 1e-6 km.
    [[nodiscard]] double distance_quantile_km(double from_day, double to_day, double p) const;
    [[nodiscard]] double mean_distance_km(double from_day, double to_day) const;
    /// P(T <= t): the chance that the distance is reached by then. A distance of 0 or less is reached at
    /// once.
    [[nodiscard]] double chance_reached(double distance_km, double by_day) const;
    /// Days after the origin by which the distance is reached with chance p, to 0.001 day; absent: not within
    /// 60 years.
    [[nodiscard]] std::optional<double> days_to_reach(double distance_km, double p) const;
    /// The same as a whole day, rounded up; absent where it comes after `latest_day`.
    [[nodiscard]] std::optional<int> day_to_reach(double distance_km, double p,
                                                  int latest_day = horizon_days) const;

    [[nodiscard]] const Riders& riders() const { return riders_; }
    /// kappa S / 365.25 of each rider kept, for the days between two days after the origin.
    [[nodiscard]] std::vector<double> shapes(double from_day, double to_day) const;

private:
    /// Chances of having reached one distance by days already asked about.
    using ByDay = std::map<int, double>;
    struct Bracket {
        ByDay::const_iterator low;  ///< The last day known to have too small a chance.
        ByDay::const_iterator high; ///< The first day known to have enough; end: none yet.
    };

    /// Operating days of each clock from the origin to a day, linear inside a day.
    [[nodiscard]] double operating_days(std::size_t clock, double to_day) const;
    void reckon_to(std::size_t day) const;
    [[nodiscard]] double chance_at_most(const std::vector<double>& shapes, double distance_km) const;
    /// The first day by whose end the mean distance is so far, `latest_day` at most.
    [[nodiscard]] int day_of_mean(double distance_km, int latest_day) const;
    /// A guess at the day of chance p inside a bracket.
    [[nodiscard]] int guess(const ByDay& known, const Bracket& bracket, double distance_km, double p,
                            int latest_day) const;

    Riders riders_;
    RidingDays riding_;
    Date origin_;
    std::vector<std::size_t> clocks_used_;
    std::vector<double> mean_km_an_operating_day_; ///< Per clock, its riders by weight.
    /// Per clock used, operating days up to the end of each day, and the mean distance; grown as far as they
    /// are asked for.
    mutable std::vector<std::vector<double>> operating_;
    mutable std::vector<double> mean_km_;
    mutable std::map<double, ByDay> reached_;
};

} // namespace sumpbook::usage
