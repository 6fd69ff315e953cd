// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/upkeep/bike_today.h"
#include "model/upkeep/due_item.h"

#include <vector>

namespace sumpbook::upkeep {

/// Recalls and bulletins that wait: by the latest entry of each number those that are open and not said to
/// be of no concern, and recurring ones by their next day. Their window is 0 (numbers.md 4.4). An open one
/// without a day is `due`; one of which it is not known whether it applies is `unknown`.
[[nodiscard]] std::vector<DueItem> open_recalls(const BikeToday& bike);

} // namespace sumpbook::upkeep
