// SPDX-License-Identifier: GPL-3.0-or-later
// A binary fraction is not a number as it was written.
// Refused by: use of deleted function|deleted
#include "model/quantity/decimal.h"

using namespace sumpbook;

#ifdef FORBIDDEN
Decimal read() { return Decimal(12.5); }
#else
Decimal read() { return Decimal(125, 1); }
#endif
