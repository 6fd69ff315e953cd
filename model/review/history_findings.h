// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/garage.h"
#include "model/review/finding.h"

#include <vector>

namespace sumpbook::review {

/// What is odd in a bike's record, in log order: readings that fall or leap, cells that could not be read,
/// entries changed in two places, money that stands twice in a visit, dates outside the bike's time here,
/// plan items that are not in the plan, its VIN, fills far outside its own, and what jobs and measures leave
/// open. Nothing is changed; every finding names its entries.
[[nodiscard]] std::vector<Finding> history_findings(const Bike& bike);

} // namespace sumpbook::review
