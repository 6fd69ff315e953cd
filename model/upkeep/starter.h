// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/bike.h"
#include "model/garage/plan_item.h"

#include <optional>
#include <string>
#include <vector>

namespace sumpbook::upkeep {

/// A plan to start from, by common practice (starter_plan.csv): only what the bike has. Chain items are
/// left out where it has a final-drive compartment, coolant where it is air- or oil-cooled, spark plugs on
/// diesels, clutch fluid without a clutch compartment, final drive oil without a final-drive one, the
/// first service where it has gone more than 1 600 km already. With a home country that is listed, its
/// statutory inspection. Every item says that the handbook comes first.
[[nodiscard]] std::vector<PlanItem> starter_plan(const BikeDetails& bike,
                                                 const std::optional<std::string>& home_country,
                                                 const std::optional<Distance>& ridden);

} // namespace sumpbook::upkeep
