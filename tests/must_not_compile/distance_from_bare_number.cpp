// SPDX-License-Identifier: GPL-3.0-or-later
// A bare number is no distance: its unit is missing.
// Refused by: private within|calling a private|could not convert|no viable conversion
#include "model/quantity/distance.h"

using namespace sumpbook;

#ifdef FORBIDDEN
auto ridden() { return Distance(100); }
#else
auto ridden() { return Distance::from_whole_km(100); }
#endif
