// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/settings.h"
#include "model/usage/fuel.h"
#include "model/usage/oil_use.h"
#include "reports/document/document.h"
#include "reports/document/value.h"

#include <string>
#include <vector>

namespace sumpbook::compose {

/// Oil used by another bike of the owner.
struct OilUsedElsewhere {
    std::string bike;
    double litres_per_1000km = 0;
};

/// Fuel and oil used by one bike.
struct ConsumptionReport {
    std::string bike;
    usage::FuelUse fuel;
    usage::OilUseResult oil;                   ///< Of the engine.
    std::vector<OilUsedElsewhere> other_bikes; ///< Those with a figure, in the order of the garage.
};

/// {"schema": 1, "items": [{"bike": ..., "fuel": ..., "oil": ...}]}.
[[nodiscard]] document::Value consumption_json(const std::vector<ConsumptionReport>& bikes);
/// Overall figures and what they are held against; with `details` every span and every fill of oil.
[[nodiscard]] document::Document consumption_text(const std::vector<ConsumptionReport>& bikes,
                                                  const GarageSettings& settings, bool details);

} // namespace sumpbook::compose
