// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/cost/forecast.h"

#include <algorithm>
#include <iterator>
#include <set>

namespace sumpbook::cost {
namespace {

using Kind = ForecastGroup::Kind;

bool is_sold(const Bike& bike, const Date& today) {
    const auto& sale = bike.details.value.sold;
    return sale && sale->date <= today;
}

/// Of everything that has a price.
std::vector<std::string> categories_of(const std::vector<BikeBasis>& bikes) {
    std::set<std::string> categories;
    for (const auto& bike : bikes) {
        for (const auto& job : bike.jobs) {
            if (job.cost) categories.insert(job.category);
        }
        for (const auto& cost : bike.dated)
            categories.insert(cost.category);
        if (bike.fuel) categories.insert(bike.fuel->category);
        if (bike.oil) categories.insert(bike.oil->category);
        if (bike.repairs.cost) categories.insert(bike.repairs.category);
    }
    return {categories.begin(), categories.end()};
}

std::vector<ForecastLine> lines(const ForecastRun& run, Kind kind) {
    std::vector<ForecastLine> all;
    for (std::size_t i = 0; i < run.plan.groups.size(); ++i) {
        const auto& group = run.plan.groups[i];
        if (group.kind == kind) all.push_back({group.key, spread_of(run.result.sums[i])});
    }
    return all;
}

/// By how often they fall due.
void add_jobs(const ForecastRun& run, CostForecast& forecast) {
    for (std::size_t bike = 0; bike < run.bikes.size(); ++bike) {
        const auto& basis = run.bikes[bike];
        for (std::size_t job = 0; job < basis.jobs.size(); ++job) {
            const auto times = run.result.jobs_done[bike][job];
            forecast.jobs.push_back({bike, job, static_cast<double>(times) / run.wish.paths});
        }
    }
}

NotPriced gap_of(const PlannedJob& job, const std::string& bike) {
    if (job.without_rate)
        return {bike, job.item.label, NotPricedBecause::no_rate, text_of(*job.without_rate)};
    return {bike, job.item.label, NotPricedBecause::no_cost, {}};
}

} // namespace

std::vector<NotPriced> not_priced(const ForecastRun& run, std::size_t bike) {
    const auto& basis = run.bikes[bike];
    std::vector<NotPriced> all = basis.not_priced;
    for (std::size_t i = 0; i < basis.jobs.size(); ++i) {
        const auto& job = basis.jobs[i];
        if (run.result.jobs_done[bike][i] > 0 && !job.cost && !job.is_free())
            all.push_back(gap_of(job, basis.bike->name()));
    }
    return all;
}

std::vector<std::string> ForecastRun::bike_names() const {
    std::vector<std::string> names;
    for (const auto& basis : bikes)
        names.push_back(basis.bike->name());
    return names;
}

ForecastRun run_forecast(const Garage& garage, const std::vector<const Bike*>& bikes, const Date& today,
                         const ForecastWish& wish) {
    ForecastRun run;
    run.currency = currency_of(garage);
    run.today = today;
    run.wish = wish;
    const Date until = plus_months(today, wish.months);
    for (const auto* bike : bikes) {
        if (!is_sold(*bike, today)) run.bikes.push_back(bike_basis(*bike, garage, today, until));
    }
    run.plan.pieces = pieces_of(today, today, wish.months);
    run.plan.categories = categories_of(run.bikes);
    run.plan.groups = forecast_groups(run.plan.pieces, run.bike_names(), run.plan.categories);
    run.plan.paths = wish.paths;
    run.plan.seed = wish.seed;
    run.plan.threads = wish.threads;
    if (!run.bikes.empty()) run.result = simulate(run.bikes, run.plan);
    return run;
}

std::optional<CostForecast> cost_forecast(const ForecastRun& run) {
    if (run.bikes.empty()) return std::nullopt;
    CostForecast forecast;
    forecast.currency = run.currency;
    forecast.today = run.today;
    forecast.until = run.plan.pieces.back().last;
    forecast.wish = run.wish;
    forecast.next_12_months = spread_of(run.result.sums.front());
    if (!run.result.sums_together.empty())
        forecast.next_12_months_together = spread_of(run.result.sums_together.front());
    forecast.months = lines(run, Kind::month);
    forecast.years = lines(run, Kind::year);
    forecast.categories = lines(run, Kind::category);
    std::erase_if(forecast.categories, [](const ForecastLine& line) { return line.spread == Spread{}; });
    forecast.bikes = lines(run, Kind::bike);
    forecast.up_to_month = lines(run, Kind::up_to_month);
    add_jobs(run, forecast);
    for (std::size_t bike = 0; bike < run.bikes.size(); ++bike)
        std::ranges::move(not_priced(run, bike), std::back_inserter(forecast.not_priced));
    return forecast;
}

ChanceOver chance_over(const ForecastRun& run, std::int64_t budget_minor) {
    if (run.bikes.empty()) return {};
    ChanceOver chance{chance_above(run.result.sums.front(), budget_minor), {}};
    if (!run.result.sums_together.empty())
        chance.together = chance_above(run.result.sums_together.front(), budget_minor);
    return chance;
}

} // namespace sumpbook::cost
