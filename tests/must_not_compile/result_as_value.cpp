// SPDX-License-Identifier: GPL-3.0-or-later
// A result is looked into before its value is used.
// Refused by: cannot convert|could not convert|no viable conversion
#include "model/quantity/decimal.h"

using namespace sumpbook;

#ifdef FORBIDDEN
Decimal read() { return Decimal::parse("12.5"); }
#else
Decimal read() { return Decimal::parse("12.5").value_or(Decimal{}); }
#endif
