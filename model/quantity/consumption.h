// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/quantity/distance.h"
#include "model/quantity/volume.h"

namespace sumpbook {

/// Fuel used over distance, a computed figure. Held in L/100 km; above 0.
struct Consumption {
    double litres_per_100km = 0;
    [[nodiscard]] double in(ConsumptionUnit unit) const;
};

/// Refused unless fuel and distance are above 0.
[[nodiscard]] Result<Consumption> consumption_of(Volume fuel, Distance over);
/// From a typed figure in any unit; refused unless above 0.
[[nodiscard]] Result<Consumption> consumption_of(const Written<ConsumptionUnit>& written);

} // namespace sumpbook
