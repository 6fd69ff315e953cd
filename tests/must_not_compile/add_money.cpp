// SPDX-License-Identifier: GPL-3.0-or-later
// Two amounts may be in two currencies: they are summed apart in a MoneyByCurrency.
// Refused by: no match for|invalid operands
#include "model/quantity/money.h"

using namespace sumpbook;

#ifdef FORBIDDEN
auto sum(const Money& a, const Money& b) { return a + b; }
#else
auto sum(const Money& a, const Money& b) {
    MoneyByCurrency both;
    both.add(a);
    both.add(b);
    return both;
}
#endif
