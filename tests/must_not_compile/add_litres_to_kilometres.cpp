// SPDX-License-Identifier: GPL-3.0-or-later
// Litres are not added to kilometres.
// Refused by: no match for|invalid operands
#include "model/quantity/distance.h"
#include "model/quantity/volume.h"

using namespace sumpbook;

#ifdef FORBIDDEN
auto sum(Distance road, Volume fuel) { return road + fuel; }
#else
auto sum(Distance road, Distance more) { return road + more; }
#endif
