// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/cost/bills.h"
#include "model/cost/due_point.h"
#include "model/cost/job_cost.h"
#include "model/cost/not_priced.h"
#include "model/cost/worn_parts.h"
#include "model/upkeep/bike_today.h"

#include <cstddef>
#include <optional>
#include <vector>

namespace sumpbook::cost {

/// An item of the plan, or a part that wears or ages and that no item renews, ready to be brought forward in
/// time.
struct PlannedJob {
    PlanItem item; ///< Of a part its slot as slug, and no limits of its own.
    std::string category;
    upkeep::Moment grid_start;
    DuePoint first; ///< Empty where nothing can be counted from; a job that includes it may start it.
    PartLife life;  ///< Of the part it renews: a limit beside those of the item (numbers.md 4.7).
    double not_before_day = 0;       ///< The day the item comes into force; 0: it is.
    std::vector<std::size_t> resets; ///< Jobs done with it, by their place in the list.
    std::optional<JobCost> cost;     ///< Of today's prices; absent: not priced.
    std::optional<Money> estimate;   ///< In the garage's currency.
    std::vector<Bill> bills;         ///< Past costs the cost rests on.
    /// Where there is no cost: the estimate or the latest bill that no exchange rate converts.
    std::optional<Money> without_rate;
    double drift_percent_a_year = 0;

    /// An estimate of nothing is nothing: such a job costs 0 and is no gap.
    [[nodiscard]] bool is_free() const { return estimate && estimate->minor <= 0 && bills.empty(); }
};

/// The plan of a bike, jobs that include others before those they include, then worn parts. A part's limit
/// joins the item that renews it, or sets it right (numbers.md 4.7). What has no day is told in `not_priced`;
/// a job without any cost only where it falls due in the time looked at, which paths show. Items done once
/// and over are left out, unless a part of theirs wears.
[[nodiscard]] std::vector<PlannedJob> planned_jobs(const upkeep::BikeToday& bike,
                                                   const GarageSettings& settings,
                                                   std::vector<NotPriced>& not_priced);

/// The next due point of a job done at a distance on a day.
[[nodiscard]] DuePoint due_after(const PlannedJob& job, const upkeep::BikeToday& bike,
                                 std::optional<double> at_km, double on_day);

} // namespace sumpbook::cost
