// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/garage.h"
#include "reports/document/document.h"
#include "reports/document/value.h"

#include <string>
#include <vector>

namespace sumpbook::compose {

/// "6 000 km or 12 months", "-" for none.
[[nodiscard]] std::string limits_words(const Limits& limits);

/// The upkeep plans of bikes: {"schema": 1, "items": [...]}.
[[nodiscard]] document::Value plan_json(const std::vector<const Bike*>& bikes);
[[nodiscard]] document::Document plan_text(const std::vector<const Bike*>& bikes);

/// Items that are offered and not yet in the plan.
[[nodiscard]] document::Value offered_plan_json(const std::string& bike, const std::vector<PlanItem>& items);
[[nodiscard]] document::Document offered_plan_text(const std::string& bike,
                                                   const std::vector<PlanItem>& items);

} // namespace sumpbook::compose
