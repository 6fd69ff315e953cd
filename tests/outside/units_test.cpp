// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/catch.h"
#include "tests/outside/check_table.h"

#include "model/quantity/consumption.h"
#include "model/quantity/distance.h"
#include "model/quantity/torque.h"
#include "model/quantity/volume.h"

#include <map>

using namespace sumpbook;
using namespace sumpbook::outside;

namespace {

const CheckRow& unit(std::string_view key) { return check_row("std-units.csv", key); }

Decimal exact(const CheckRow& row) { return Decimal::parse(row["value"]).value(); }

Volume volume(const Decimal& number, VolumeUnit unit) { return volume_of({number, unit}).value(); }

double in_mpg(double litres_per_100km, ConsumptionUnit mpg) { return Consumption{litres_per_100km}.in(mpg); }

} // namespace

TEST_CASE("The gallons, the quart and the mile have their published size exactly", "[outside][units]") {
    const std::map<std::string_view, VolumeUnit> volumes{
        {"US liquid gallon in litres", VolumeUnit::us_gal},
        {"imperial gallon in litres", VolumeUnit::imp_gal},
        {"US quart in L", VolumeUnit::us_qt},
    };
    for (const auto& [key, volume_unit] : volumes) {
        const CheckRow& row = unit(key);
        TESTING_ROW(row);
        CHECK(volume(Decimal{1}, volume_unit) == volume(exact(row), VolumeUnit::l));
        CHECK(in_unit(volume(Decimal{1}, volume_unit), VolumeUnit::l, 9) == exact(row));
    }
    const CheckRow& mile = unit("mile in km");
    TESTING_ROW(mile);
    CHECK(distance_of({Decimal{1}, DistanceUnit::mi}).value() ==
          distance_of({exact(mile), DistanceUnit::km}).value());
}

TEST_CASE("A US gallon is so many cubic inches, to the last digit", "[outside][units]") {
    const CheckRow& cubic_inches = unit("US gallon in cubic inches");
    const CheckRow& inch = unit("inch in mm");
    TESTING_ROW(cubic_inches);
    TESTING_ROW(inch);
    const Decimal cubic_inch_mm3 = multiply(multiply(exact(inch), exact(inch)).value(), exact(inch)).value();
    const Decimal microlitres = multiply(cubic_inch_mm3, exact(cubic_inches)).value();
    const Decimal litres = multiply(microlitres, Decimal(1, 6)).value();
    CHECK(volume(litres, VolumeUnit::l) == volume(Decimal{1}, VolumeUnit::us_gal));
}

TEST_CASE("The two gallons differ by their published ratio", "[outside][units]") {
    const CheckRow& row = unit("imperial/US gallon");
    TESTING_ROW(row);
    CHECK(in_unit(volume(Decimal{1}, VolumeUnit::imp_gal), VolumeUnit::us_gal, 10) == exact(row));
}

TEST_CASE("L/100 km times miles per gallon is the published constant", "[outside][units]") {
    const std::map<std::string_view, ConsumptionUnit> products{
        {"L/100km x mpg(US)", ConsumptionUnit::mpg_us},
        {"L/100km x mpg(imp)", ConsumptionUnit::mpg_imp},
    };
    for (const auto& [key, mpg] : products) {
        const CheckRow& row = unit(key);
        TESTING_ROW(row);
        CHECK(5 * in_mpg(5, mpg) == Approx(row.number("value")).epsilon(0).margin(1e-10));
    }
    const std::map<std::string_view, ConsumptionUnit> one_km_per_l{
        {"1 km/L in mpg(US)", ConsumptionUnit::mpg_us},
        {"1 km/L in mpg(imp)", ConsumptionUnit::mpg_imp},
    };
    for (const auto& [key, mpg] : one_km_per_l) {
        const CheckRow& row = unit(key);
        TESTING_ROW(row);
        CHECK(in_mpg(100, mpg) == Approx(row.number("value")).epsilon(0).margin(1e-10));
    }
}

TEST_CASE("A pint is asked back with the size of the published imperial pint", "[outside][units]") {
    const CheckRow& row = unit("imperial pint in L");
    TESTING_ROW(row);
    const auto answer = read_volume_unit("pint");
    REQUIRE_FALSE(answer);
    CHECK_THAT(answer.error().sentence,
               Catch::Contains("imperial pint (" + rounded(exact(row), 3).text() + " L)"));
    CHECK(volume(exact(row), VolumeUnit::l).picolitres() * 8 == picolitres_in(VolumeUnit::imp_gal));
}

TEST_CASE("Torque units have their published size in newton metres", "[outside][units]") {
    const std::map<std::string_view, TorqueUnit> torques{
        {"lbf ft in N m", TorqueUnit::lbf_ft},
        {"lbf in in N m", TorqueUnit::lbf_in},
        {"kgf m in N m", TorqueUnit::kgf_m},
    };
    for (const auto& [key, torque_unit] : torques) {
        const CheckRow& row = unit(key);
        TESTING_ROW(row);
        CHECK(newton_metres_of({Decimal{1}, torque_unit}) == Approx(row.number("value")).epsilon(1e-15));
    }
    // lbf ft / kgf m = pound in kg x foot in m
    const CheckRow& pound = unit("pound in kg");
    TESTING_ROW(pound);
    const double foot_m = unit("inch in mm").number("value") * 12 / 1000;
    CHECK(torque_in(TorqueUnit::kgf_m, newton_metres_of({Decimal{1}, TorqueUnit::lbf_ft})) ==
          Approx(pound.number("value") * foot_m).epsilon(1e-14));
}
