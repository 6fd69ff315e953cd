// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/upkeep/bike_today.h"
#include "model/upkeep/due_item.h"

#include <vector>

namespace sumpbook::upkeep {

/// Age at which tyres are replaced, and from which they are looked over every year. Common practice, from
/// memory (no source opened).
inline constexpr int tyre_replace_months = 120;
inline constexpr int tyre_inspect_months = 60;

/// The tyres fitted now whose date code can be read: `soon` from 60 months of age, `due` at 120. Where a
/// code leaves the decade open the latest possible week counts.
[[nodiscard]] std::vector<DueItem> tyre_ages(const BikeToday& bike);

} // namespace sumpbook::upkeep
