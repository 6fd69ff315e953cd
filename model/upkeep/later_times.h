// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/upkeep/bike_today.h"
#include "model/upkeep/due_item.h"

#include <vector>

namespace sumpbook::upkeep {

/// Later times are told this far ahead, and no more than these of one item. DESIGN.
inline constexpr int later_times_years = 3;
inline constexpr std::size_t most_later_times = 6;

/// The times after the next, as far as the median is within three years (numbers.md 4.5): on the path of
/// each chance p the item is done on the day its first limit is reached, where the bike has gone what it
/// passes by that day with chance p. What is reached already is done today. Nothing for what is not known to
/// come again.
[[nodiscard]] std::vector<DayRange> later_times(const DueItem& item, const BikeToday& bike);

} // namespace sumpbook::upkeep
