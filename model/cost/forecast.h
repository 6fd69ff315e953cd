// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/cost/simulation.h"
#include "model/cost/spread.h"

#include <optional>
#include <string>
#include <vector>

namespace sumpbook::cost {

/// What is asked of a forecast.
struct ForecastWish {
    int months = fewest_months;
    std::uint32_t paths = usual_paths;
    std::uint64_t seed = 1;
    unsigned threads = 1; ///< Changes nothing but the time it takes.

    static constexpr int fewest_months = 12;
    static constexpr int most_months = 120;
    static constexpr std::uint32_t usual_paths = 10'000;
};

/// The paths of some bikes, and what they rest on.
struct ForecastRun {
    Currency currency;
    Date today;
    ForecastWish wish;
    std::vector<BikeBasis> bikes; ///< Without bikes sold up to today.
    SimulationPlan plan;
    SimulationResult result; ///< Without any sum where there is no bike.

    [[nodiscard]] std::vector<std::string> bike_names() const;
};
/// `bikes` are of the garage.
[[nodiscard]] ForecastRun run_forecast(const Garage& garage, const std::vector<const Bike*>& bikes,
                                       const Date& today, const ForecastWish& wish);

/// What is not in the sums of a bike of the run, as far as the run shows.
[[nodiscard]] std::vector<NotPriced> not_priced(const ForecastRun& run, std::size_t bike);

/// A month, a calendar year, a category or a bike.
struct ForecastLine {
    std::string key; ///< "2026-05", "2026", "fuel", "Old twin".
    Spread spread;
};
/// A planned job over the whole time looked at.
struct JobOutlook {
    std::size_t bike = 0;
    std::size_t job = 0;
    double mean_times = 0;
};

/// What bikes will cost (numbers.md 5).
struct CostForecast {
    Currency currency;
    Date today;
    Date until;
    ForecastWish wish;
    Spread next_12_months;
    /// The same where one draw says for all bikes how much they are ridden; absent with one bike.
    std::optional<Spread> next_12_months_together;
    std::vector<ForecastLine> months; ///< The first from today, the last up to `until`.
    std::vector<ForecastLine> years;
    std::vector<ForecastLine> categories;  ///< Of the next 12 months; without those of nothing.
    std::vector<ForecastLine> bikes;       ///< Of the next 12 months.
    std::vector<ForecastLine> up_to_month; ///< From today up to a day: "2026-05-31".
    std::vector<JobOutlook> jobs;
    std::vector<NotPriced> not_priced;

    /// The sums are 0 for want of prices, not because nothing is to come.
    [[nodiscard]] bool nothing_priced() const { return next_12_months == Spread{} && !not_priced.empty(); }
    /// To put aside each month: a twelfth of what the next 12 months cost in 9 of 10 paths at most.
    [[nodiscard]] std::int64_t monthly_amount_minor() const { return twelfth(next_12_months.p90_minor); }
};
/// Absent where there is no bike to look at.
[[nodiscard]] std::optional<CostForecast> cost_forecast(const ForecastRun& run);

/// The chance that the next 12 months cost strictly more than a budget; riding alone and all bikes together.
struct ChanceOver {
    double chance = 0;
    std::optional<double> together; ///< Absent with one bike.
};
[[nodiscard]] ChanceOver chance_over(const ForecastRun& run, std::int64_t budget_minor);

} // namespace sumpbook::cost
