// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/oil/fuel_dilution.h"

#include "tests/catch.h"

using namespace sumpbook::oil;

TEST_CASE("every rule finds again the share it was mixed with", "[fuel]") {
    for (const BlendRule rule : {BlendRule::refutas, BlendRule::double_log, BlendRule::arrhenius}) {
        for (const double share : {0.0, 0.01, 0.05, 0.5, 1.0}) {
            const auto mixed = blended_mm2_s(rule, 14.5, 0.35, share);
            REQUIRE(mixed.has_value());
            CHECK(fuel_share(rule, 14.5, *mixed, 0.35).value() == Approx(share).margin(1e-9));
        }
    }
}

TEST_CASE("a rule without an index is left out", "[fuel]") {
    CHECK_FALSE(fuel_share(BlendRule::refutas, 14.5, 13, 0.2).has_value());
    CHECK(fuel_share(BlendRule::refutas, 14.5, 13, 0.21).has_value());
    CHECK_FALSE(fuel_share(BlendRule::double_log, 14.5, 13, 0.3).has_value());
    CHECK(fuel_share(BlendRule::double_log, 14.5, 13, 0.31).has_value());
    CHECK(fuel_share(BlendRule::arrhenius, 14.5, 13, 0.1).has_value());
    CHECK_FALSE(blended_mm2_s(BlendRule::refutas, 14.5, 0.2, 0.1).has_value());
    CHECK_FALSE(fuel_share(BlendRule::arrhenius, 14.5, 0.3, 0.35).has_value()); // thinner than the fuel
}

TEST_CASE("petrol from a loss of viscosity is a spread, not one number", "[fuel]") {
    const auto fuel = petrol_from_viscosity(14.5, 12.27, ViscosityAt::celsius_100).value();
    CHECK(fuel.refutas_percent.value() == Approx(2).margin(0.01));
    CHECK(fuel.lowest_percent <= *fuel.refutas_percent);
    CHECK(fuel.highest_percent == *fuel.arrhenius_percent);
    CHECK(fuel.lowest_percent < fuel.highest_percent);
}

TEST_CASE("an oil that has not thinned holds no fuel by this measure", "[fuel]") {
    for (const double used : {14.5, 14.6, 40.0}) {
        const auto fuel = petrol_from_viscosity(14.5, used, ViscosityAt::celsius_100).value();
        CHECK(fuel.lowest_percent == 0.0);
        CHECK(fuel.highest_percent == 0.0);
    }
    CHECK(petrol_from_viscosity(14.5, 14.49, ViscosityAt::celsius_100)->lowest_percent > 0);
}

TEST_CASE("figures that cannot be an oil are refused", "[fuel]") {
    CHECK_FALSE(petrol_from_viscosity(0.3, 0.2, ViscosityAt::celsius_100).has_value());
    CHECK_FALSE(petrol_from_viscosity(14.5, 0, ViscosityAt::celsius_100).has_value());
    CHECK_FALSE(petrol_from_viscosity(14.5, 0.3, ViscosityAt::celsius_100).has_value());
    CHECK(petrol_mm2_s(ViscosityAt::celsius_40) == 0.5);
}
