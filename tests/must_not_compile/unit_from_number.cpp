// SPDX-License-Identifier: GPL-3.0-or-later
// A unit is named, not numbered.
// Refused by: cannot convert|cannot initialize|no viable conversion
#include "model/quantity/units.h"

using namespace sumpbook;

#ifdef FORBIDDEN
DistanceUnit dial() { return 1; }
#else
DistanceUnit dial() { return DistanceUnit::mi; }
#endif
