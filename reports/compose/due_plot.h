// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/upkeep/due_item.h"
#include "reports/plot/plot.h"

#include <vector>

namespace sumpbook::compose {

/// When each item falls due, as a stretch from one chance in ten to nine in ten with a mark for the middle,
/// in the order of the list; a line at today. The bike stands with the item where there are several. Items
/// without a day have no stretch: the description names them.
[[nodiscard]] plot::Plot due_plot(const std::vector<upkeep::DueItem>& items, const Date& today);

} // namespace sumpbook::compose
