// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/oil/viscosity_temperature.h"

#include "tests/catch.h"

using namespace sumpbook::oil;

TEST_CASE("the line goes through both of its points, given in any order", "[viscosity]") {
    const auto line = ViscosityLine::through({100, 14.5}, {40, 100}).value();
    CHECK(line.mm2_s_at(40).value() == Approx(100).epsilon(1e-6));
    CHECK(line.mm2_s_at(100).value() == Approx(14.5).epsilon(1e-6));
    CHECK(line.mm2_s_at(70).value() < line.mm2_s_at(69).value());
}

TEST_CASE("a thin liquid comes back through the exponential terms", "[viscosity]") {
    const auto line = ViscosityLine::through({40, 1.8}, {100, 0.9}).value();
    CHECK(line.mm2_s_at(40).value() == Approx(1.8).epsilon(1e-3));
    CHECK(line.mm2_s_at(100).value() == Approx(0.9).epsilon(1e-3));
}

TEST_CASE("outside the two temperatures the figure is marked as extrapolated", "[viscosity]") {
    const auto line = ViscosityLine::through({40, 100}, {100, 14.5}).value();
    CHECK(line.extrapolates_to(39.9));
    CHECK_FALSE(line.extrapolates_to(40));
    CHECK_FALSE(line.extrapolates_to(100));
    CHECK(line.extrapolates_to(100.1));
}

TEST_CASE("points that make no line are refused", "[viscosity]") {
    CHECK_FALSE(ViscosityLine::through({40, 100}, {40, 14.5}).has_value());
    CHECK_FALSE(ViscosityLine::through({40, 14.5}, {100, 100}).has_value());
    CHECK_FALSE(ViscosityLine::through({40, 14.5}, {100, 14.5}).has_value());
    CHECK_FALSE(ViscosityLine::through({-273.15, 100}, {100, 14.5}).has_value());
    CHECK_FALSE(ViscosityLine::through({40, 100}, {100, 0}).has_value());
    CHECK_FALSE(ViscosityLine::through({40, 100}, {100, 0.2}).has_value());
    CHECK(ViscosityLine::through({40, 100}, {100, 0.21}).has_value());
}

TEST_CASE("temperatures the equation does not reach are refused", "[viscosity]") {
    const auto line = ViscosityLine::through({40, 100}, {100, 14.5}).value();
    CHECK_FALSE(line.mm2_s_at(-273.15).has_value());
    CHECK_FALSE(line.mm2_s_at(-272).has_value()); // past the largest number
    CHECK_FALSE(line.mm2_s_at(3000).has_value()); // below 0.21 mm2/s
}
