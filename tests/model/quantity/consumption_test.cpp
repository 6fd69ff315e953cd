// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/quantity/consumption.h"

#include "tests/catch.h"
#include "tests/model/quantity/generators.h"

using namespace sumpbook;

TEST_CASE("Consumption is fuel over distance", "[consumption]") {
    const auto used =
        consumption_of(*volume_of({Decimal(153, 1), VolumeUnit::l}), Distance::from_whole_km(310));
    CHECK(decimal_from_double(used->litres_per_100km, 6).text() == "4.935484");
    const auto gallon_for_fifty = consumption_of(*volume_of({Decimal(1), VolumeUnit::us_gal}),
                                                 *distance_of({Decimal(50), DistanceUnit::mi}));
    CHECK(decimal_from_double(gallon_for_fifty->in(ConsumptionUnit::mpg_us), 9).text() == "50.000000000");
}

TEST_CASE("Consumption needs fuel and distance above 0", "[consumption]") {
    const Volume litre = *volume_of({Decimal(1), VolumeUnit::l});
    CHECK_FALSE(consumption_of(litre, Distance{}));
    CHECK_FALSE(consumption_of(litre, Distance::from_whole_km(-1)));
    CHECK_FALSE(consumption_of(Volume{}, Distance::from_whole_km(1)));
    CHECK_FALSE(consumption_of(Written<ConsumptionUnit>{Decimal(0), ConsumptionUnit::mpg_us}));
    CHECK_FALSE(consumption_of(Written<ConsumptionUnit>{Decimal(-5), ConsumptionUnit::l_per_100km}));
}

TEST_CASE("Properties of consumption", "[consumption][property]") {
    rc::prop("a typed figure comes back in its own unit", [] {
        const Decimal number(*rc::gen::inRange<std::int64_t>(1, 1'000'000), 3);
        const auto unit = *rc::gen::element(ConsumptionUnit::l_per_100km, ConsumptionUnit::km_per_l,
                                            ConsumptionUnit::mpg_us, ConsumptionUnit::mpg_imp);
        const auto used = consumption_of(Written<ConsumptionUnit>{number, unit}).value();
        RC_ASSERT(decimal_from_double(used.in(unit), 3).same_as_written(number));
    });
}
