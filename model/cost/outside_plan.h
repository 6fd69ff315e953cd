// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/cost/not_priced.h"
#include "model/cost/planned_jobs.h"

#include <vector>

namespace sumpbook::cost {

/// What was spent on a bike in the 12 months up to today that nothing in its forecast stands for: no job, no
/// repair, no fuel or oil and no cost that comes again. Gear, modifications, oil analyses, planned work that
/// no item of the plan names. Told once a bike, and so is that it has no upkeep plan; buying and selling the
/// bike is left out. `jobs`: of its forecast.
void tell_outside_plan(const upkeep::BikeToday& bike, const GarageSettings& settings,
                       const std::vector<PlannedJob>& jobs, std::vector<NotPriced>& not_priced);

} // namespace sumpbook::cost
