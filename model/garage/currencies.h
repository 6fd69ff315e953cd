// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/garage.h"

#include <set>

namespace sumpbook {

/// The currencies that the amounts and prices of all bikes are in.
[[nodiscard]] std::set<Currency> currencies_in(const Garage& garage);

/// Settings for a garage that has none, as one bike handed over by itself: the usual ones in the currency
/// that all its amounts are in. Absent where settings are recorded, and where there is not exactly one.
[[nodiscard]] std::optional<GarageSettings> settings_from_amounts(const Garage& garage);

} // namespace sumpbook
