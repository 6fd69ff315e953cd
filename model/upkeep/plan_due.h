// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/upkeep/bike_today.h"
#include "model/upkeep/due_item.h"

#include <optional>
#include <vector>

namespace sumpbook::upkeep {

/// When a planned item falls due (numbers.md 4.1 to 4.6). Absent where it is done once and over, or not in
/// force yet.
[[nodiscard]] std::optional<DueItem> plan_due(const PlanItem& item, const BikeToday& bike);

/// Every time the item was done, each timed against the limits that stood before it. Jobs before the plan
/// came into force, and first jobs of which no start is known, are not timed.
[[nodiscard]] std::vector<DoneAndTimed> history_of(const PlanItem& item, const BikeToday& bike);

/// Limits in force now: after the last job; never done: from going into service. Empty where the item was
/// never recorded and the record starts above its first limit in any kind (a bike bought used).
[[nodiscard]] NextLimits standing_limits(const PlanItem& item, const BikeToday& bike,
                                         const std::vector<DoneAndTimed>& history);

/// Fills in today, the state, and the days expected, from the item's limits.
void judge(DueItem& item, const BikeToday& bike);

} // namespace sumpbook::upkeep
