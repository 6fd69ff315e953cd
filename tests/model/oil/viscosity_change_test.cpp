// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/oil/viscosity_change.h"

#include "tests/catch.h"

using namespace sumpbook;
using namespace sumpbook::oil;

namespace {

Decimal number(const char* text) { return Decimal::parse(text).value(); }

} // namespace

TEST_CASE("change is counted against the new oil", "[viscosity]") {
    CHECK(viscosity_change_percent(number("14.0"), number("14.0")).value() == 0.0);
    CHECK(viscosity_change_percent(number("10"), number("9")).value() == Approx(-10));
    CHECK_FALSE(viscosity_change_percent(number("0"), number("9")).has_value());
}

TEST_CASE("a change held against a limit is exact", "[viscosity]") {
    // 10 % below 14.1 is 12.69, which binary fractions miss
    CHECK(compare_viscosity_change(number("14.1"), number("12.68"), number("-10")) ==
          std::strong_ordering::less);
    CHECK(compare_viscosity_change(number("14.1"), number("12.69"), number("-10")) ==
          std::strong_ordering::equal);
    CHECK(compare_viscosity_change(number("14.1"), number("12.70"), number("-10")) ==
          std::strong_ordering::greater);
    CHECK(compare_viscosity_change(number("14.1"), number("16.92"), number("20")) ==
          std::strong_ordering::equal);
    CHECK(compare_viscosity_change(number("14.1"), number("16.93"), number("20")) ==
          std::strong_ordering::greater);
}
