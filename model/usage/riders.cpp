// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/usage/riders.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace sumpbook::usage {
namespace {

// The grid, all DESIGN (numbers.md 3.3).
struct Pair {
    double kappa, level, prior;
};
constexpr std::array<Pair, 8> pairs{{{3, 1, 0.17},
                                     {6, 1, 0.17},
                                     {12, 1, 0.17},
                                     {24, 1, 0.17},
                                     {48, 1, 0.17},
                                     {3, 0.125, 0.05},
                                     {6, 0.125, 0.05},
                                     {12, 0.125, 0.05}}};
constexpr std::array<double, 3> forgettings{0.25, 0.5, 0.75};
constexpr double level_memory = 0.8; // of the present level, after a year
constexpr double smallest_weight_kept = 0.001;

constexpr int longest_record_in_steps = 120;
constexpr int shortest_step_days = 28;
constexpr int shortest_record_days = 7;

/// A season as first supposed and as learnt.
class Clock {
public:
    explicit Clock(const ByMonth& share)
        : supposed_(share) {
        set(share);
    }

    [[nodiscard]] const ByMonth& pace() const { return pace_; }
    [[nodiscard]] double operating_days(const ByMonth& riding_days) const {
        double sum = 0;
        for (std::size_t m = 0; m < 12; ++m)
            sum += riding_days[m] * pace_[m];
        return sum;
    }
    void learn(const ByMonth& riding_days, double operating_days, double distance_km) {
        years_ += operating_days / days_of_year;
        km_ += distance_km;
        const double paced = this->operating_days(riding_days);
        if (paced > 0) {
            for (std::size_t m = 0; m < 12; ++m) {
                km_of_month_[m] += distance_km * riding_days[m] * pace_[m] / paced;
                months_seen_[m] += riding_days[m] / days_of_month[m];
            }
        }
        if (km_ > 0) relearn();
    }

private:
    void relearn() {
        const double km_a_year = km_ / years_;
        ByMonth share{};
        double sum = 0;
        for (std::size_t m = 0; m < 12; ++m) {
            share[m] = (supposed_[m] + km_of_month_[m] / km_a_year) / (1 + months_seen_[m]);
            sum += share[m];
        }
        for (double& s : share)
            s /= sum;
        set(share);
    }
    void set(const ByMonth& share) {
        for (std::size_t m = 0; m < 12; ++m)
            pace_[m] = share[m] / (days_of_month[m] / days_of_year);
    }

    ByMonth supposed_;
    ByMonth pace_{};
    ByMonth km_of_month_{};
    ByMonth months_seen_{};
    double years_ = 0;
    double km_ = 0;
};

/// Flat, then gentle and strong seasons with their peak in each month.
std::vector<Clock> clocks() {
    std::vector<Clock> all;
    const auto add = [&all](double strength, double peak) {
        ByMonth share{};
        double sum = 0;
        for (std::size_t m = 0; m < 12; ++m) {
            const double angle = 2 * std::numbers::pi * (static_cast<double>(m) - peak) / 12;
            share[m] = days_of_month[m] / days_of_year * std::exp(strength * std::cos(angle));
            sum += share[m];
        }
        for (double& s : share)
            s /= sum;
        all.emplace_back(share);
    };
    add(0, 0);
    for (const double strength : {1.0, 2.0}) {
        for (int peak = 0; peak < 12; ++peak)
            add(strength, peak);
    }
    return all;
}

double prior_of_clock(std::size_t clock) { return clock == 0 ? 0.25 : 0.75 / 24; }

/// What is left after some years: of a rider's certainty, by its forgetting, and of the present level.
struct Fading {
    explicit Fading(double years)
        : of_level(std::pow(level_memory, years)) {
        for (std::size_t i = 0; i < forgettings.size(); ++i)
            of_certainty[i] = std::pow(forgettings[i], years);
    }
    std::array<double, forgettings.size()> of_certainty{};
    double of_level;
};

/// A grid point while it learns.
struct Point {
    Rider rider;
    std::size_t pair = 0;
    std::size_t fading = 0;
    RateBelief long_run; ///< The same without forgetting.
    double ln_weight = 0;

    /// Certainty fades to the prior's, the level drifts back to the bike's own long-run average (3.4).
    void forget(const Fading& left) {
        auto& [a, b] = rider.belief;
        const double prior_a = RateBelief{}.a;
        const double level = b / (a - 0.5);
        const double own_average = long_run.b_km / (long_run.a - 0.5);
        a = prior_a + (a - prior_a) * left.of_certainty[fading];
        b = (own_average + (level - own_average) * left.of_level) * (a - 0.5);
    }
    /// How likely this rider thought the step, then the step itself (3.5 iii and iv).
    void see(const StepShape& shape, double distance_km) {
        ln_weight += ln_evidence(rider.belief, shape, distance_km);
        rider.belief.see(shape.alpha, distance_km);
        long_run.see(shape.alpha, distance_km);
    }
};

std::vector<Point> grid(std::size_t clock_count, double km_a_year) {
    std::vector<Point> points;
    for (std::size_t clock = 0; clock < clock_count; ++clock) {
        for (std::size_t p = 0; p < pairs.size(); ++p) {
            const auto& [kappa, level, prior] = pairs[p];
            const auto belief = prior_belief(km_a_year * level, kappa);
            const double ln_weight = std::log(prior_of_clock(clock) * prior / 3);
            for (std::size_t f = 0; f < forgettings.size(); ++f)
                points.push_back({{clock, kappa, level, forgettings[f], belief, 0}, p, f, belief, ln_weight});
        }
    }
    return points;
}

void take(const Step& step, const RidingDays& riding, std::vector<Clock>& seasons,
          std::vector<Point>& points) {
    const ByMonth riding_days = riding.by_month(step.after, step.last);
    std::vector<double> operating;
    std::vector<StepShape> shapes; // by clock, then pair
    for (const auto& clock : seasons) {
        operating.push_back(std::max(clock.operating_days(riding_days), 1.0));
        for (const auto& pair : pairs)
            shapes.emplace_back(pair.kappa * operating.back() / days_of_year);
    }
    const Fading left(step.days() / days_of_year);
    for (auto& point : points) {
        point.forget(left);
        point.see(shapes[point.rider.clock * pairs.size() + point.pair], step.distance_km);
    }
    for (std::size_t c = 0; c < seasons.size(); ++c)
        seasons[c].learn(riding_days, operating[c], step.distance_km);
}

/// Weights from their logarithms, the least likely riders left out.
Riders weighed(const std::vector<Point>& points, bool keep_all) {
    Riders riders;
    riders.largest_ln_weight = std::ranges::max_element(points, {}, &Point::ln_weight)->ln_weight;
    double sum = 0;
    for (const auto& point : points) {
        const double weight = std::exp(point.ln_weight - riders.largest_ln_weight);
        if (weight < smallest_weight_kept && !keep_all) continue;
        riders.kept.push_back(point.rider);
        riders.kept.back().weight = weight;
        sum += weight;
    }
    for (auto& rider : riders.kept)
        rider.weight /= sum;
    return riders;
}

} // namespace

std::vector<Step> steps_of(const std::vector<DayEnd>& day_ends) {
    if (day_ends.empty()) return {};
    const int whole = days_between(day_ends.front().date, day_ends.back().date);
    if (whole < shortest_record_days) return {};
    const int shortest = std::max(shortest_step_days, whole / longest_record_in_steps);
    std::vector<Step> steps;
    const DayEnd* start = &day_ends.front();
    for (const auto& end : day_ends) {
        if (days_between(start->date, end.date) < shortest) continue;
        steps.push_back({start->date, end.date, (end.distance - start->distance).km()});
        start = &end;
    }
    const DayEnd& last = day_ends.back();
    if (steps.empty()) steps.push_back({start->date, start->date, 0}); // the whole record is one step
    steps.back().last = last.date;
    steps.back().distance_km += (last.distance - start->distance).km();
    return steps;
}

Riders learn_riders(const std::vector<Step>& steps, const RidingDays& riding,
                    std::optional<double> expected_km_a_year) {
    auto seasons = clocks();
    auto points = grid(seasons.size(), expected_km_a_year.value_or(default_km_a_year));
    for (const auto& step : steps)
        take(step, riding, seasons, points);
    if (!steps.empty()) {
        for (auto& point : points)
            point.forget(Fading(1)); // so that the forecast is one proper process
    }
    Riders riders = weighed(points, steps.empty());
    for (const auto& clock : seasons)
        riders.pace.push_back(clock.pace());
    riders.steps = steps.size();
    return riders;
}

} // namespace sumpbook::usage
