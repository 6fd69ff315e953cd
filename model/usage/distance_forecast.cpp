// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/usage/distance_forecast.h"

#include <boost/math/special_functions/beta.hpp>
#include <boost/math/tools/toms748_solve.hpp>

#include <algorithm>
#include <cmath>

namespace sumpbook::usage {
namespace {

// Doubles are exact enough and several times as fast as the long doubles taken otherwise.
using Doubles = boost::math::policies::policy<boost::math::policies::promote_double<false>>;

constexpr double km_precision = 1e-7;
constexpr double day_precision = 1e-6;

/// Where a rising function reaches 0 between two places, to the precision; from above.
template <class Function>
double root(Function f, double low, double high, double precision) {
    const double at_low = f(low);
    const double at_high = f(high);
    if (at_low >= 0) return low;
    if (at_high <= 0) return high;
    std::uintmax_t most_steps = 200;
    const auto close = [&](double a, double b) { return b - a <= precision; };
    return boost::math::tools::toms748_solve(f, low, high, at_low, at_high, close, most_steps).second;
}

/// Straight against the logarithm of the mean distance, nearly.
double logit(double chance) { return std::log(chance / (1 - chance)); }
bool tells(double chance) { return chance > 1e-9 && chance < 1 - 1e-9; }
constexpr double usual_slope = 4; // of the logit, where only one point is known

} // namespace

DistanceForecast::DistanceForecast(Riders riders, RidingDays riding, const Date& origin)
    : riders_(std::move(riders))
    , riding_(std::move(riding))
    , origin_(origin)
    , mean_km_an_operating_day_(riders_.pace.size())
    , operating_(riders_.pace.size())
    , mean_km_{0.0} {
    for (const auto& rider : riders_.kept) {
        clocks_used_.push_back(rider.clock);
        mean_km_an_operating_day_[rider.clock] += rider.weight * rider.mean_km_a_year() / days_of_year;
    }
    std::ranges::sort(clocks_used_);
    clocks_used_.erase(std::ranges::unique(clocks_used_).begin(), clocks_used_.end());
    for (const auto clock : clocks_used_)
        operating_[clock] = {0.0};
}

void DistanceForecast::reckon_to(std::size_t day) const {
    for (std::size_t next = mean_km_.size(); next <= day; ++next) {
        const Date date = plus_days(origin_, static_cast<int>(next));
        const double counts = riding_.counts(date);
        double mean_km = 0;
        for (const auto clock : clocks_used_) {
            auto& sums = operating_[clock];
            sums.push_back(sums.back() + counts * riders_.pace[clock][month_index(date)]);
            mean_km += sums.back() * mean_km_an_operating_day_[clock];
        }
        mean_km_.push_back(mean_km);
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
    for (const auto clock : clocks_used_)
        by_clock[clock] = operating_days(clock, to_day) - operating_days(clock, from_day);
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
            const double x = distance_km / (rider.belief.b_km + distance_km);
            chance += rider.weight * boost::math::ibeta(shapes[i], rider.belief.a, x, Doubles());
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
    double high = std::max(1.0, mean_distance_km(from_day, to_day));
    while (chance_at_most(alphas, high) < p) {
        low = high;
        high *= 2;
    }
    return root([&](double km) { return chance_at_most(alphas, km) - p; }, low, high, km_precision);
}

double DistanceForecast::mean_distance_km(double from_day, double to_day) const {
    double mean = 0;
    for (const auto clock : clocks_used_)
        mean += mean_km_an_operating_day_[clock] *
                (operating_days(clock, to_day) - operating_days(clock, from_day));
    return mean;
}

double DistanceForecast::chance_reached(double distance_km, double by_day) const {
    if (distance_km <= 0) return 1;
    return 1 - chance_at_most(0, by_day, distance_km);
}

int DistanceForecast::day_of_mean(double distance_km, int latest_day) const {
    const auto latest = static_cast<std::size_t>(latest_day);
    constexpr std::size_t half_a_year = 183;
    while (mean_km_.size() <= latest && mean_km_.back() < distance_km)
        reckon_to(std::min(latest, mean_km_.size() + half_a_year));
    const auto day = std::ranges::lower_bound(mean_km_, distance_km) - mean_km_.begin();
    return std::min(static_cast<int>(day), latest_day);
}

int DistanceForecast::guess(const ByDay& known, const Bracket& bracket, double distance_km, double p,
                            int latest_day) const {
    const auto ln_mean = [&](int day) {
        reckon_to(static_cast<std::size_t>(day));
        return std::log(mean_km_[static_cast<std::size_t>(day)]);
    };
    const bool below = tells(bracket.low->second);
    const bool above = bracket.high != known.end() && tells(bracket.high->second);
    if (!below && !above && bracket.high == known.end()) return day_of_mean(distance_km, latest_day);
    if (!below && !above) return (bracket.low->first + bracket.high->first) / 2;
    const auto& from = below ? *bracket.low : *bracket.high;
    double slope = usual_slope;
    if (below && above) {
        const double way = ln_mean(bracket.high->first) - ln_mean(bracket.low->first);
        if (way > 0) slope = (logit(bracket.high->second) - logit(bracket.low->second)) / way;
    }
    const double ln_km = ln_mean(from.first) + (logit(p) - logit(from.second)) / slope;
    return day_of_mean(std::exp(ln_km), latest_day);
}

std::optional<int> DistanceForecast::day_to_reach(double distance_km, double p, int latest_day) const {
    if (distance_km <= 0) return 0;
    if (latest_day <= 0) return std::nullopt;
    ByDay& known = reached_[distance_km];
    known.emplace(0, 0.0);
    const auto ask = [&](int day) {
        if (!known.contains(day)) known.emplace(day, chance_reached(distance_km, day));
    };
    if (latest_day < horizon_days) ask(latest_day); // one question where the answer is "not by then"
    for (int step = 1;; ++step) {
        const auto enough = std::ranges::find_if(known, [&](const auto& day) { return day.second >= p; });
        const Bracket bracket{std::prev(enough), enough};
        const int low = bracket.low->first;
        if (low >= latest_day) return std::nullopt;
        if (enough != known.end() && enough->first - low == 1) return enough->first;
        const int highest = enough == known.end() ? latest_day : enough->first - 1;
        int next = guess(known, bracket, distance_km, p, latest_day);
        if (step % 4 == 0) next = enough == known.end() ? 2 * next : (low + highest) / 2; // guesses creep
        ask(std::clamp(next, low + 1, highest));
    }
}

std::optional<double> DistanceForecast::days_to_reach(double distance_km, double p) const {
    const auto day = day_to_reach(distance_km, p);
    if (!day || *day == 0) return day ? std::optional(0.0) : std::nullopt;
    return root([&](double t) { return chance_reached(distance_km, t) - p; }, *day - 1, *day, day_precision);
}

} // namespace sumpbook::usage
