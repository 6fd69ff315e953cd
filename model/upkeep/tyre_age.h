// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/upkeep/bike_today.h"
#include "model/upkeep/due_item.h"

#include <vector>

namespace sumpbook::upkeep {

/// Age at which tyres are replaced. Common practice, from memory (no source opened); that they are looked
/// over every year from five years on is an item of the starter plan.
inline constexpr int tyre_replace_months = 120;

/// The tyres fitted now whose date code can be read: `due` at 120 months of age, `soon` in the year
/// before. Where a code leaves the decade open the latest possible week counts.
[[nodiscard]] std::vector<DueItem> tyre_ages(const BikeToday& bike);

} // namespace sumpbook::upkeep
