// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/cost/bike_basis.h"

#include "model/cost/draws.h"
#include "model/cost/outside_plan.h"
#include "model/cost/price_drift.h"
#include "model/cost/spent.h"
#include "model/usage/fuel.h"
#include "model/usage/oil_use.h"

#include <algorithm>
#include <numeric>

namespace sumpbook::cost {
namespace {

std::string text_or_empty(const std::optional<Money>& money) { return money ? text_of(*money) : ""; }

/// Tells what is missing and gives nothing, unless both are known.
std::optional<RunningCost> running_cost(const std::string& what, const std::string& category,
                                        std::optional<double> litres_per_km, FoundPrice found,
                                        const GarageSettings& settings, BikeBasis& basis) {
    if (!litres_per_km)
        basis.not_priced.push_back({basis.bike->name(), what, NotPricedBecause::no_consumption, {}});
    if (!found.price) {
        const auto because = found.without_rate ? NotPricedBecause::no_rate : NotPricedBecause::no_price;
        basis.not_priced.push_back({basis.bike->name(), what, because, text_or_empty(found.without_rate)});
    }
    if (!litres_per_km || !found.price) return std::nullopt;
    const std::string branch = branch_of(settings, category);
    return RunningCost{std::max(0.0, *litres_per_km), std::move(*found.price), branch,
                       drift_percent_a_year(settings, branch)};
}

void add_running(const GarageSettings& settings, BikeBasis& basis) {
    constexpr double hundred_km = 100;
    constexpr double thousand_km = 1000;
    const Bike& bike = basis.bike->bike();
    std::optional<double> fuel;
    if (const auto used = usage::fuel_use(bike, basis.bike->odometer()).overall)
        fuel = used->litres_per_100km / hundred_km;
    std::optional<double> oil = usage::oil_use(bike, basis.bike->odometer()).litres_per_1000km;
    if (oil) oil = *oil / thousand_km;
    basis.fuel = running_cost("fuel", "fuel", fuel, fuel_price(bike, settings), settings, basis);
    // An engine that has used no oil needs no price of it.
    const bool uses_none = oil && *oil <= 0;
    if (!uses_none)
        basis.oil = running_cost("oil topped up", "oil", oil, oil_price(bike, settings), settings, basis);
}

/// The mean logarithm of what the other bikes' repairs cost.
std::optional<double> guess_from_others(const Bike& bike, const Garage& garage,
                                        const GarageSettings& settings, const Date& today,
                                        std::size_t& count) {
    std::vector<double> others;
    for (const auto& other : garage.bikes) {
        if (other.id == bike.id) continue;
        const auto logarithms = ln_costs(repair_bills(other, settings, today));
        others.insert(others.end(), logarithms.begin(), logarithms.end());
    }
    count = others.size();
    if (others.empty()) return std::nullopt;
    return std::accumulate(others.begin(), others.end(), 0.0) / static_cast<double>(others.size());
}

/// A repair; not a job the plan lacks that was done for nothing.
bool broke_down(const Entry& entry, const Bike& bike) {
    return is_repair(entry, bike.plan) && (entry.does.empty() || !money_of_entry(entry).empty());
}

void add_repairs(const Bike& bike, const Garage& garage, const GarageSettings& settings, BikeBasis& basis) {
    Repairs& repairs = basis.repairs;
    const Bike& seen = basis.bike->bike();
    if (const auto record = basis.bike->odometer().span()) {
        repairs.exposure_km = record->distance().km();
        repairs.events = static_cast<std::size_t>(std::ranges::count_if(seen.log, [&](const LogEntry& entry) {
            return broke_down(entry.value, seen) && entry.value.date >= record->first &&
                   entry.value.date <= record->last;
        }));
    }
    repairs.rate = RepairRate::after(repairs.events, repairs.exposure_km);
    std::optional<Money> without_rate;
    repairs.bills = repair_bills(seen, settings, basis.bike->today(), &without_rate);
    repairs.category = branch_of(settings, "repairs");
    repairs.drift_percent_a_year = drift_percent_a_year(settings, repairs.category);
    const auto guess = guess_from_others(bike, garage, settings, basis.bike->today(), repairs.other_bills);
    repairs.cost = JobCost::from(guess, ln_costs(repairs.bills));
    if (!repairs.cost)
        basis.not_priced.push_back({basis.bike->name(), "repairs",
                                    without_rate ? NotPricedBecause::no_rate : NotPricedBecause::no_cost,
                                    text_or_empty(without_rate)});
}

} // namespace

BikeBasis bike_basis(const Bike& bike, const Garage& garage, const Date& today, const Date& until) {
    const GarageSettings settings = settings_of(garage);
    BikeBasis basis;
    basis.bike = std::make_unique<upkeep::BikeToday>(bike, today);
    basis.draw_id = hash32(hex_text(bike.id));
    basis.riding = std::make_unique<Riding>(*basis.bike);
    basis.jobs = planned_jobs(*basis.bike, settings, basis.not_priced);
    basis.dated = dated_costs(bike, settings, today, until, basis.not_priced);
    add_running(settings, basis);
    add_repairs(bike, garage, settings, basis);
    tell_outside_plan(*basis.bike, settings, basis.jobs, basis.not_priced);
    return basis;
}

} // namespace sumpbook::cost
