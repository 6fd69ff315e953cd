// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/settings.h"
#include "model/usage/fuel.h"
#include "model/usage/oil_use.h"
#include "reports/plot/plot.h"

#include <string>

namespace sumpbook::compose {

/// Fuel used in each sound stretch, at the day of the full fill that ends it; the line breaks where a stretch
/// in between is void. The overall figure is a rule. Empty without a sound stretch.
[[nodiscard]] plot::Plot fuel_consumption_plot(const std::string& bike, const usage::FuelUse& use,
                                               const GarageSettings& settings);

/// Oil used in each fill, L in 1 000 km, at the day it was put in; lower bounds are drawn hollow, fills while
/// running in apart. The manual's figure is a rule, else the published figures are a band. The line breaks
/// at a fill without a figure. Empty where no fill has one.
[[nodiscard]] plot::Plot oil_consumption_plot(const std::string& bike, const usage::OilUseResult& use);

} // namespace sumpbook::compose
