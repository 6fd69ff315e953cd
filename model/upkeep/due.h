// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/upkeep/bike_today.h"
#include "model/upkeep/due_item.h"

#include <vector>

namespace sumpbook::upkeep {

/// What takes longer to work out, and is left out unless it is asked for.
struct DueDetail {
    bool later_times = false;
    bool reasons = false;
};

/// Everything that falls due on a bike: its plan, open recalls, costs that come again, tyres by
/// age, parts by wear.
/// Nothing for a bike that was sold. Overdue, due, unknown, soon, later; among equals the earlier day
/// first, then by slug.
[[nodiscard]] std::vector<DueItem> due_items(const BikeToday& bike, DueDetail detail = {});
/// Of several bikes, in the same order.
[[nodiscard]] std::vector<DueItem> due_items(const std::vector<const Bike*>& bikes, const Date& today,
                                             DueDetail detail = {});

/// True where an item is due or overdue.
[[nodiscard]] bool needs_attention(const std::vector<DueItem>& items);

} // namespace sumpbook::upkeep
