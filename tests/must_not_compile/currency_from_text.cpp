// SPDX-License-Identifier: GPL-3.0-or-later
// A currency is checked against ISO 4217 before it exists.
// Refused by: could not convert|no viable conversion|no matching|conversion from
#include "model/quantity/currency.h"

using namespace sumpbook;

#ifdef FORBIDDEN
Currency paid_in() { return "EUR"; }
#else
Result<Currency> paid_in() { return Currency::from_code("EUR"); }
#endif
