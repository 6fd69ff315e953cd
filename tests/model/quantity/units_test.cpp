// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/quantity/units.h"

#include "tests/catch.h"

#include <initializer_list>
#include <type_traits>

using namespace sumpbook;

static_assert(!std::is_convertible_v<DistanceUnit, int> && !std::is_convertible_v<VolumeUnit, DistanceUnit>);
// Numbers that stand in garage files.
static_assert(static_cast<int>(DistanceUnit::km) == 0 && static_cast<int>(DistanceUnit::mi) == 1);
static_assert(static_cast<int>(VolumeUnit::l) == 0 && static_cast<int>(VolumeUnit::ml) == 1 &&
              static_cast<int>(VolumeUnit::us_gal) == 2 && static_cast<int>(VolumeUnit::imp_gal) == 3 &&
              static_cast<int>(VolumeUnit::us_qt) == 4);
static_assert(static_cast<int>(ConsumptionUnit::l_per_100km) == 0 &&
              static_cast<int>(ConsumptionUnit::km_per_l) == 1 &&
              static_cast<int>(ConsumptionUnit::mpg_us) == 2 &&
              static_cast<int>(ConsumptionUnit::mpg_imp) == 3);

namespace {

template <class Unit>
void check_all(Result<Unit> (*read)(std::string_view), Unit unit,
               std::initializer_list<std::string_view> spellings) {
    for (const auto spelling : spellings) {
        INFO(spelling);
        const auto found = read(spelling);
        REQUIRE(found);
        CHECK(*found == unit);
    }
    CHECK(read(symbol(unit)).value() == unit);
}

template <class Unit>
void check_question(Result<Unit> (*read)(std::string_view), std::string_view asks_for,
                    std::initializer_list<std::string_view> spellings) {
    for (const auto spelling : spellings) {
        INFO(spelling);
        const auto found = read(spelling);
        REQUIRE_FALSE(found);
        CHECK(found.error().kind == ProblemKind::refused);
        CHECK_THAT(found.error().sentence, Catch::Contains("?") && Catch::Contains(std::string(asks_for)));
        CHECK(found.error().place.text == spelling);
    }
}

} // namespace

TEST_CASE("Units of distance", "[units]") {
    check_all(read_distance_unit, DistanceUnit::km,
              {"km", "KM", "km.", " kms", "kilometre", "Kilometer", "kilom\u00E8tres", "kil\u00F3metros",
               "chilometri"});
    check_all(read_distance_unit, DistanceUnit::mi,
              {"mi", "miles", "Mile", "Meilen", "milles", "millas", "miglia"});
    CHECK_FALSE(read_distance_unit("m"));
    CHECK_FALSE(read_distance_unit("L"));
}

TEST_CASE("Units of volume", "[units]") {
    check_all(read_volume_unit, VolumeUnit::l,
              {"L", "l", "ltr", "Liter", "litre", "litres", "litro", "litri", "\u2113"});
    check_all(read_volume_unit, VolumeUnit::ml, {"mL", "ml", "cc", "cm3", "cm\u00B3", "millilitres"});
    check_all(read_volume_unit, VolumeUnit::us_gal,
              {"US gal", "us gal", "U.S. gallons", "gal (US)", "gal-us", "US\u00A0gallon"});
    check_all(read_volume_unit, VolumeUnit::imp_gal,
              {"imp gal", "imperial gallon", "gal (imp)", "UK gal", "gallons (UK)", "Imp. Gal."});
    check_all(read_volume_unit, VolumeUnit::us_qt, {"US qt", "us quarts", "qt (US)", "quart (US)"});
}

TEST_CASE("A gallon, a quart or a pint without its country is asked back", "[units]") {
    check_question(read_volume_unit, "US gal or imp gal",
                   {"gal", "gallon", "Gallons", "gal.", "Gallone", "galones"});
    check_question(read_volume_unit, "US qt", {"qt", "quart", "quarts"});
    check_question(read_volume_unit, "imperial pint", {"pint", "pints", "pt"});
    check_question(read_consumption_unit, "mpg (US) or mpg (imp)",
                   {"mpg", "MPG", "mi/gal", "miles per gallon"});
}

TEST_CASE("Units of consumption", "[units]") {
    check_all(read_consumption_unit, ConsumptionUnit::l_per_100km,
              {"L/100 km", "l/100km", "L / 100 km", "litres per 100 km", "Liter/100km", "l/100"});
    check_all(read_consumption_unit, ConsumptionUnit::km_per_l, {"km/L", "km/l", "kmpl", "km per litre"});
    check_all(read_consumption_unit, ConsumptionUnit::mpg_us,
              {"mpg (US)", "US mpg", "mpg-US", "miles per US gallon"});
    check_all(read_consumption_unit, ConsumptionUnit::mpg_imp,
              {"mpg (imp)", "UK mpg", "mpg imp.", "miles per imperial gallon"});
}

TEST_CASE("Units of temperature", "[units]") {
    check_all(read_temperature_unit, TemperatureUnit::celsius,
              {"C", "\u00B0C", "\u00BAC", "\u2103", "deg C", "celsius"});
    check_all(read_temperature_unit, TemperatureUnit::fahrenheit, {"F", "\u00B0F", "\u2109", "Fahrenheit"});
    CHECK_FALSE(read_temperature_unit("\u00B0"));
    CHECK_FALSE(read_temperature_unit("K"));
}

TEST_CASE("Units of torque", "[units]") {
    check_all(read_torque_unit, TorqueUnit::nm, {"N m", "Nm", "N\u00B7m", "N-m", "newton metres"});
    check_all(read_torque_unit, TorqueUnit::lbf_ft,
              {"lbf ft", "ft-lb", "ft.lbs", "lb-ft", "lbf\u00B7ft", "foot-pounds"});
    check_all(read_torque_unit, TorqueUnit::lbf_in, {"lbf in", "in-lb", "in.lbs", "inch pounds"});
    check_all(read_torque_unit, TorqueUnit::kgf_m, {"kgf m", "kgf\u00B7m", "kg-m", "mkp"});
    CHECK_FALSE(read_torque_unit("mN m"));
}

TEST_CASE("An unknown or missing unit is refused with the choices", "[units]") {
    CHECK(read_volume_unit("bucket").error().sentence ==
          "\"bucket\" is not a known unit of volume: use L, mL, US gal, imp gal or US qt.");
    CHECK(read_distance_unit("").error().sentence == "A unit of distance is missing here: use km or mi.");
    CHECK(read_distance_unit(" . ").error().sentence == "A unit of distance is missing here: use km or mi.");
    CHECK_FALSE(read_distance_unit("km mi"));
    CHECK_FALSE(read_distance_unit("k m\u4E2D"));
    CHECK_FALSE(read_volume_unit("\xFF"));
}
