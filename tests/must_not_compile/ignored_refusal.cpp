// SPDX-License-Identifier: GPL-3.0-or-later
// What may be refused is looked at.
// Refused by: nodiscard|unused-result
#include "model/quantity/decimal.h"

using namespace sumpbook;

#ifdef FORBIDDEN
void read() { Decimal::parse("12.5"); }
#else
bool read() { return Decimal::parse("12.5").has_value(); }
#endif
