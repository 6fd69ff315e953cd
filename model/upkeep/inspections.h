// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/plan_item.h"

#include <optional>
#include <string_view>

namespace sumpbook::upkeep {

/// How often a country has a motorcycle inspected, as a statutory plan item `inspection`, from
/// inspections.csv. An engine of unknown size counts as large enough. Absent for a country that is not
/// listed and for engines too small for it. Its source text says "check your authority".
[[nodiscard]] std::optional<PlanItem> statutory_inspection(std::string_view country,
                                                           std::optional<int> displacement_cm3);

} // namespace sumpbook::upkeep
