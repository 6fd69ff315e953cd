// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/cost/bills.h"
#include "model/cost/job_cost.h"
#include "model/cost/not_priced.h"
#include "model/upkeep/bike_today.h"

#include <cstddef>
#include <optional>
#include <vector>

namespace sumpbook::cost {

/// When a job is due: whichever comes first, in the figures paths are made of.
struct DuePoint {
    std::optional<double> km;  ///< True distance.
    std::optional<double> day; ///< Days from today.
    [[nodiscard]] bool any() const { return km || day; }
    bool operator==(const DuePoint&) const = default;
};

/// An item of the plan, ready to be brought forward in time.
struct PlannedJob {
    const PlanItem* item = nullptr; ///< In the bike of the BikeToday it was made from.
    std::string category;
    upkeep::Moment grid_start;
    DuePoint first; ///< Empty where nothing can be counted from; a job that includes it may start it.
    double not_before_day = 0;       ///< The day the item comes into force; 0: it is.
    std::vector<std::size_t> resets; ///< Jobs done with it, by their place in the list.
    std::optional<JobCost> cost;     ///< Of today's prices; absent: not priced.
    std::optional<Money> estimate;   ///< In the garage's currency.
    std::vector<Bill> bills;         ///< Past costs the cost rests on.
    double drift_percent_a_year = 0;
};

/// The plan of a bike, jobs that include others before those they include. What has no day or an estimate
/// that cannot be converted is told in `not_priced`; a job without any cost only where it falls due in the
/// time looked at, which paths show. Items done once and over are left out.
[[nodiscard]] std::vector<PlannedJob> planned_jobs(const upkeep::BikeToday& bike,
                                                   const GarageSettings& settings,
                                                   std::vector<NotPriced>& not_priced);

/// The next due point of a job done at a distance on a day.
[[nodiscard]] DuePoint due_after(const PlannedJob& job, const upkeep::BikeToday& bike,
                                 std::optional<double> at_km, double on_day);

} // namespace sumpbook::cost
