// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/cost/dated_costs.h"
#include "model/cost/planned_jobs.h"
#include "model/cost/repair_rate.h"
#include "model/cost/riding.h"
#include "model/cost/running_price.h"

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace sumpbook::cost {

/// Fuel, or oil topped up: so many litres for each kilometre at the price of a litre.
struct RunningCost {
    double litres_per_km = 0;
    RunningPrice price;
    std::string category;
    double drift_percent_a_year = 0;
    [[nodiscard]] double minor_per_km() const { return litres_per_km * price.minor_per_litre; }
};

/// Unplanned repairs of a bike.
struct Repairs {
    /// Between the first and the last accepted reading. Work that only names a job the plan lacks, and cost
    /// nothing, is none.
    std::size_t events = 0;
    double exposure_km = 0; ///< The distance between them.
    RepairRate rate;
    std::vector<Bill> bills;     ///< Of any day.
    std::size_t other_bills = 0; ///< Of the other bikes, a first guess at what one costs.
    std::optional<JobCost> cost; ///< Of one repair; absent: not priced.
    std::string category;
    double drift_percent_a_year = 0;
};

/// Everything a forecast of a bike's costs rests on; `costs forecast --why` prints it.
struct BikeBasis {
    std::unique_ptr<upkeep::BikeToday> bike;
    std::uint32_t draw_id = 0; ///< hash32 of the bike's id, 32 digits of hexadecimal.
    std::unique_ptr<Riding> riding;
    std::vector<PlannedJob> jobs;
    std::vector<DatedCost> dated;
    std::optional<RunningCost> fuel;
    std::optional<RunningCost> oil;
    Repairs repairs;
    std::vector<NotPriced> not_priced;
};

/// `garage`: for the repairs of the other bikes, sold ones too. `until`: the last day of the forecast.
[[nodiscard]] BikeBasis bike_basis(const Bike& bike, const Garage& garage, const Date& today,
                                   const Date& until);

} // namespace sumpbook::cost
