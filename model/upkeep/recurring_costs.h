// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/upkeep/bike_today.h"
#include "model/upkeep/due_item.h"

#include <vector>

namespace sumpbook::upkeep {

/// Costs that come again (insurance, tax, storage): each series by its category and text, due every so many
/// months after the day its last payment covers from, until the series ends. A payment counts as a member
/// where category and text agree, or where its category has only one series. Their window is 0. Not listed
/// where an entry of the series satisfies a plan item: that item says when. Named by their category, by
/// their text too where series share it.
[[nodiscard]] std::vector<DueItem> recurring_costs(const BikeToday& bike);

} // namespace sumpbook::upkeep
