// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/usage/distance_forecast.h"

#include "model/usage/outlook.h"

#include <boost/math/special_functions/beta.hpp>

#include <algorithm>
#include <cmath>

namespace sumpbook::usage {

DistanceForecast::DistanceForecast(Riders riders, RidingDays riding, const Date& origin)
    : riders_(std::move(riders))
    , riding_(std::move(riding))
    , origin_(origin)
    , operating_(riders_.pace.size()) {
    for (const auto& rider : riders_.kept)
        clocks_used_.push_back(rider.clock);
    std::ranges::sort(clocks_used_);
    clocks_used_.erase(std::ranges::unique(clocks_used_).begin(), clocks_used_.end());
    for (const auto clock : clocks_used_)
        operating_[clock] = {0.0};
}

void DistanceForecast::reckon_to(std::size_t day) const {
    for (std::size_t next = operating_[clocks_used_.front()].size(); next <= day; ++next) {
        const Date date = plus_days(origin_, static_cast<int>(next));
        const double counts = riding_.counts(date);
        for (const auto clock : clocks_used_) {
            auto& sums = operating_[clock];
            sums.push_back(sums.back() + counts * riders_.pace[clock][month_index(date)]);
        }
    }
}

double DistanceForecast::operating_days(std::size_t clock, double to_day) const {
    const double whole = std::floor(to_day);
    const auto index = static_cast<std::size_t>(whole);
    reckon_to(index + 1);
    const auto& sums = operating_[clock];
    return sums[index] + (to_day - whole) * (sums[index + 1] - sums[index]);
}

std::vector<double> DistanceForecast::shapes(double from_day, double to_day) const {
    std::vector<double> by_clock(riders_.pace.size());
    for (const auto clock : clocks_used_) {
        by_clock[clock] = operating_days(clock, to_day) - operating_days(clock, from_day);
    }
    std::vector<double> all;
    all.reserve(riders_.kept.size());
    for (const auto& rider : riders_.kept)
        all.push_back(rider.kappa * by_clock[rider.clock] / days_of_year);
    return all;
}

double DistanceForecast::chance_at_most(const std::vector<double>& shapes, double distance_km) const {
    double chance = 0;
    for (std::size_t i = 0; i < shapes.size(); ++i) {
        const Rider& rider = riders_.kept[i];
        if (shapes[i] <= 0) {
            chance += distance_km >= 0 ? rider.weight : 0;
        } else if (distance_km > 0) {
            chance += rider.weight *
                      boost::math::ibeta(shapes[i], rider.a, distance_km / (rider.b_km + distance_km));
        }
    }
    return chance;
}

double DistanceForecast::chance_at_most(double from_day, double to_day, double distance_km) const {
    return chance_at_most(shapes(from_day, to_day), distance_km);
}

double DistanceForecast::distance_quantile_km(double from_day, double to_day, double p) const {
    const auto alphas = shapes(from_day, to_day);
    if (chance_at_most(alphas, 0) >= p) return 0;
    double low = 0;
    double high = 1000;
    while (chance_at_most(alphas, high) < p) {
        low = high;
        high *= 2;
    }
    while (high - low > 1e-7) {
        const double middle = low + (high - low) / 2;
        (chance_at_most(alphas, middle) >= p ? high : low) = middle;
    }
    return high;
}

double DistanceForecast::mean_distance_km(double from_day, double to_day) const {
    const auto alphas = shapes(from_day, to_day);
    double mean = 0;
    for (std::size_t i = 0; i < alphas.size(); ++i) {
        const Rider& rider = riders_.kept[i];
        mean += rider.weight * alphas[i] * rider.b_km / (rider.a - 1);
    }
    return mean;
}

double DistanceForecast::chance_reached(double distance_km, double by_day) const {
    if (distance_km <= 0) return 1;
    return 1 - chance_at_most(0, by_day, distance_km);
}

std::optional<double> DistanceForecast::days_to_reach(double distance_km, double p) const {
    if (distance_km <= 0) return 0;
    constexpr double horizon = horizon_days;
    double high = 365;
    while (chance_reached(distance_km, high) < p) {
        if (high >= horizon) return std::nullopt;
        high = std::min(high * 2, horizon);
    }
    double low = 0;
    while (high - low > 1e-4) {
        const double middle = low + (high - low) / 2;
        (chance_reached(distance_km, middle) >= p ? high : low) = middle;
    }
    return high;
}

} // namespace sumpbook::usage
