// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/calc_figures.h"

#include "tests/catch.h"

#include <limits>

using namespace sumpbook;
using namespace sumpbook::compose;

TEST_CASE("zeros behind the last figure are dropped, others kept", "[calc]") {
    const auto trimmed = [](const char* text) {
        return without_trailing_zeros(Decimal::parse(text).value()).text();
    };
    CHECK(trimmed("12.500") == "12.5");
    CHECK(trimmed("80.00") == "80");
    CHECK(trimmed("100") == "100");
    CHECK(trimmed("0.000") == "0");
    CHECK(trimmed("-1.010") == "-1.01");
}

TEST_CASE("a number is printed with so many figures, large or small", "[calc]") {
    CHECK(figures(1.00211681802045, 12)->text() == "1.00211681802");
    CHECK(figures(0.000429796848199937, 5)->text() == "0.0004298");
    CHECK(figures(112728.333333333, 12)->text() == "112728.333333");
    CHECK(figures(0, 12)->text() == "0");
    CHECK(figures(-2202.29799686, 5)->text() == "-2202.3");
    CHECK(figures(9.99e16, 3)->text() == "99900000000000000");
    CHECK_FALSE(figures(1e17, 3).has_value());
    CHECK_FALSE(figures(std::numeric_limits<double>::infinity(), 3).has_value());
    CHECK_FALSE(figures(std::numeric_limits<double>::quiet_NaN(), 3).has_value());
}
