// SPDX-License-Identifier: GPL-3.0-or-later
// A number written in litres is not a number written in kilometres.
// Refused by: could not convert|no viable conversion|conversion from
#include "model/quantity/distance.h"
#include "model/quantity/volume.h"

using namespace sumpbook;

#ifdef FORBIDDEN
WrittenDistance kept(const WrittenVolume& written) { return written; }
#else
WrittenDistance kept(const WrittenDistance& written) { return written; }
#endif
