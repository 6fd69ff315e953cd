// SPDX-License-Identifier: GPL-3.0-or-later
// A bare number is no volume: its unit is missing.
// Refused by: could not convert|no viable conversion|private within|calling a private|conversion from
#include "model/quantity/volume.h"

using namespace sumpbook;

#ifdef FORBIDDEN
Volume filled() { return 12.5; }
#else
Volume filled() { return Volume::from_litres(12.5); }
#endif
