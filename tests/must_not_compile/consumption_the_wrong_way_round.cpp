// SPDX-License-Identifier: GPL-3.0-or-later
// Fuel over distance, not distance over fuel.
// Refused by: could not convert|cannot convert|no matching function|no viable conversion
#include "model/quantity/consumption.h"

using namespace sumpbook;

#ifdef FORBIDDEN
auto used(Volume fuel, Distance road) { return consumption_of(road, fuel); }
#else
auto used(Volume fuel, Distance road) { return consumption_of(fuel, road); }
#endif
