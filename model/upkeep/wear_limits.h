// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/upkeep/bike_today.h"
#include "model/upkeep/due_item.h"

#include <vector>

namespace sumpbook::upkeep {

/// Parts that are measured and wear with distance (numbers.md 4.7): brake pads, tread, chain and valve
/// clearance, each place of its own, as items with a limit on distance and no window. The limit is the
/// owner's latest for the part, else that of wear_limits.csv, whose source is named; without either, and
/// where no line can be drawn yet, there is no item. A value at its limit or past it is reached without a
/// line: where the bike stood when it was measured, or on that day where no distance is known. A component
/// fitted to the part's slot starts anew.
[[nodiscard]] std::vector<DueItem> wear_limits(const BikeToday& bike);

} // namespace sumpbook::upkeep
