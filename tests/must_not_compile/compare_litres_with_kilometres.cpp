// SPDX-License-Identifier: GPL-3.0-or-later
// A volume is neither more nor less than a distance.
// Refused by: no match for|invalid operands
#include "model/quantity/distance.h"
#include "model/quantity/volume.h"

using namespace sumpbook;

#ifdef FORBIDDEN
bool less(Distance road, Volume fuel) { return road < fuel; }
#else
bool less(Distance road, Distance more) { return road < more; }
#endif
