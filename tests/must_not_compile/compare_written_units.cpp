// SPDX-License-Identifier: GPL-3.0-or-later
// Written numbers of two kinds are not compared.
// Refused by: no match for|invalid operands
#include "model/quantity/distance.h"
#include "model/quantity/volume.h"

using namespace sumpbook;

#ifdef FORBIDDEN
bool same(const WrittenDistance& a, const WrittenVolume& b) { return a == b; }
#else
bool same(const WrittenDistance& a, const WrittenDistance& b) { return a == b; }
#endif
