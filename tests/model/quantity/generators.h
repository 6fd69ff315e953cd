// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/quantity/dates.h"
#include "model/quantity/decimal.h"

#include <rapidcheck/catch.h>

#include <ostream>

namespace sumpbook {

inline std::ostream& operator<<(std::ostream& out, const Decimal& number) { return out << number.text(); }

} // namespace sumpbook

namespace sumpbook::tests {

/// Decimals of at most `digits` digits with up to `scale` of them after the point.
inline rc::Gen<Decimal> decimals(std::int64_t below, int scale) {
    return rc::gen::apply([](std::int64_t coefficient, int places) { return Decimal(coefficient, places); },
                          rc::gen::inRange(1 - below, below), rc::gen::inRange(0, scale + 1));
}

/// Days of 1900 to 2100.
inline rc::Gen<Date> days() {
    const Date first = std::chrono::year{1900} / 1 / 1;
    const Date last = std::chrono::year{2100} / 12 / 31;
    return rc::gen::map(rc::gen::inRange(0, days_between(first, last) + 1),
                        [first](int count) { return plus_days(first, count); });
}

inline constexpr std::int64_t ten_to_18 = 1'000'000'000'000'000'000;

} // namespace sumpbook::tests
