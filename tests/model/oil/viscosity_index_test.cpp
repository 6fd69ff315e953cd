// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/oil/viscosity_index.h"

#include "tests/catch.h"

#include <limits>

using namespace sumpbook::oil;

TEST_CASE("below 2.0 mm2/s at 100 C there is no viscosity index", "[viscosity]") {
    CHECK_FALSE(viscosity_index(10, 1.999999).has_value());
    CHECK(viscosity_index(10, 2.0).has_value());
    CHECK_FALSE(viscosity_index(10, 0).has_value());
    CHECK_FALSE(viscosity_index(10, -5).has_value());
    CHECK_FALSE(reference_oils(std::numeric_limits<double>::quiet_NaN()).has_value());
}

TEST_CASE("an oil that does not thin with heat is refused", "[viscosity]") {
    CHECK_FALSE(viscosity_index(14, 14).has_value());
    CHECK_FALSE(viscosity_index(14, 100).has_value());
    CHECK(viscosity_index(14.5, 14).has_value());
    CHECK_FALSE(viscosity_index(std::numeric_limits<double>::infinity(), 14).has_value());
}

TEST_CASE("between two rows of the table the reference oils lie in proportion", "[viscosity]") {
    const auto low = reference_oils(8.80).value();
    const auto high = reference_oils(8.90).value();
    const auto between = reference_oils(8.86).value();
    CHECK(between.l_mm2_s == Approx(low.l_mm2_s * 0.4 + high.l_mm2_s * 0.6));
    CHECK(between.h_mm2_s == Approx(low.h_mm2_s * 0.4 + high.h_mm2_s * 0.6));
}

TEST_CASE("the table serves up to and including 70 mm2/s, formulas above it", "[viscosity]") {
    CHECK(reference_oils(70)->l_mm2_s == 4905.0);
    CHECK(reference_oils(70)->h_mm2_s == 1558.0);
    const double y = 70.0001;
    CHECK(reference_oils(y)->l_mm2_s == Approx(0.8353 * y * y + 14.67 * y - 216).epsilon(1e-12));
    CHECK(reference_oils(y)->h_mm2_s == Approx(0.1684 * y * y + 11.85 * y - 97).epsilon(1e-12));
}

TEST_CASE("both procedures meet at 100", "[viscosity]") {
    const double h = reference_oils(10)->h_mm2_s;
    CHECK(viscosity_index(h, 10)->exact == 100.0);
    CHECK(viscosity_index(h + 1e-6, 10)->exact == Approx(100).margin(1e-4));
    CHECK(viscosity_index(h - 1e-6, 10)->exact == Approx(100).margin(1e-4));
}

TEST_CASE("an index half-way between two whole numbers goes to the even one", "[viscosity]") {
    // procedure A at 10 mm2/s: L 147.7, H 82.87, so one unit of the index is 0.6483 mm2/s
    const auto index = [](double vi) { return viscosity_index(147.7 - vi * 0.6483, 10).value(); };
    CHECK(index(92.5).exact == Approx(92.5));
    CHECK(index(92.5).whole == 92);
    CHECK(index(93.5).whole == 94);
    CHECK(index(92.51).whole == 93);
    CHECK(index(-0.5).whole == 0);
    CHECK(index(-1.5).whole == -2);
}
