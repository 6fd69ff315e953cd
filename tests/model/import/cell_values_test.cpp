// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/import/cell_values.h"

#include "tests/catch.h"

using namespace sumpbook;
using namespace sumpbook::import;

namespace {

const Currency eur = Currency::from_code("EUR").value();
const Currency gbp = Currency::from_code("GBP").value();

CellRules point() {
    return {.mark = DecimalMark::point,
            .order = {},
            .has_decimals = false,
            .stated = {},
            .usual = {},
            .garage = eur};
}

} // namespace

TEST_CASE("Distances take the unit of the cell, the heading or the bike, and nothing else") {
    CellRules rules = point();
    rules.usual.distance = DistanceUnit::mi;
    CHECK(text_of(distance_in("12,345.6", rules).value()) == "12345.6 mi");
    CHECK(text_of(distance_in("12345 km", rules).value()) == "12345 km");
    rules.stated.distance = DistanceUnit::mi;
    CHECK(text_of(distance_in("12345 mi", rules).value()) == "12345 mi");
    CHECK_FALSE(distance_in("12345 km", rules));
    CHECK_FALSE(distance_in("-5", rules));
    CHECK_FALSE(distance_in("12x45", rules));
    CHECK_FALSE(distance_in("ca. 12345", rules));
    CHECK_FALSE(distance_in("1e5", rules));
}

TEST_CASE("Volumes are above zero; bare gallons are those of the heading") {
    CellRules rules = point();
    CHECK(text_of(volume_in("12.50", rules).value()) == "12.50 L");
    CHECK_FALSE(volume_in("0", rules));
    CHECK_FALSE(volume_in("-3", rules));
    CHECK_FALSE(volume_in("3 gal", rules));
    rules.stated.volume = VolumeUnit::imp_gal;
    CHECK(text_of(volume_in("3 gal", rules).value()) == "3 imp gal");
    CHECK_FALSE(volume_in("3 qt", rules));
    CHECK_FALSE(volume_in("3 US gal", rules));
}

TEST_CASE("Money takes its currency from either side and is never rounded") {
    CellRules rules = point();
    CHECK(text_of(money_in("12.5", rules).value()) == "12.50 EUR");
    CHECK(text_of(money_in("£12.50", rules).value()) == "12.50 GBP");
    CHECK(text_of(money_in("12.50 GBP", rules).value()) == "12.50 GBP");
    CHECK_FALSE(money_in("12.505", rules));
    CHECK_FALSE(money_in("$5", rules)); // several dollars, and the garage's own is none of them
    CHECK_FALSE(money_in("£5 GBP", rules));
    rules.stated.currency = eur;
    CHECK_FALSE(money_in("£5", rules));
    CHECK(text_of(money_in("-5 €", rules).value()) == "-5.00 EUR");
}

TEST_CASE("A price keeps all its decimals and says what it is for") {
    CellRules rules = point();
    rules.usual.volume = VolumeUnit::us_gal;
    const auto bare = unit_price_in("3.459", rules).value();
    CHECK(bare.amount.text() == "3.459");
    CHECK(bare.per == VolumeUnit::us_gal);
    const auto full = unit_price_in("£1.479/L", rules).value();
    CHECK(full.currency == gbp);
    CHECK(full.per == VolumeUnit::l);
    CHECK_FALSE(unit_price_in("1.479 per barrel", rules));
    CHECK_FALSE(unit_price_in("-1", rules));
}

TEST_CASE("One thousand eight hundred is not believed in a column of decimals") {
    CellRules rules = point();
    rules.mark = DecimalMark::comma;
    CHECK(number_in("1.859", rules).value() == Decimal(1859));
    rules.has_decimals = true;
    CHECK_FALSE(number_in("1.859", rules));
    CHECK(number_in("1,859", rules).value().text() == "1.859");
    CHECK(number_in("1859", rules).value() == Decimal(1859));
}

TEST_CASE("Dates are read with the order of the file, times of day left out") {
    CellRules rules = point();
    rules.order = DateOrder::month_day_year;
    CHECK(iso_text(date_in("4/2/2024 9:15 PM", rules).value()) == "2024-04-02");
    CHECK(iso_text(date_in("2024-04-02T09:15", rules).value()) == "2024-04-02");
    CHECK_FALSE(date_in("13/2/2024", rules));
    CHECK_FALSE(date_in("4/2/24", rules));
}

TEST_CASE("Yes and no are words of a list; anything else is doubted") {
    CHECK(yes_no_in("Ja").value());
    CHECK(yes_no_in("x").value());
    CHECK_FALSE(yes_no_in("NEIN").value());
    CHECK_FALSE(yes_no_in("partial", "full-part").value());
    CHECK_FALSE(yes_no_in("maybe").has_value());
    CHECK_FALSE(yes_no_in("part").has_value());
}

TEST_CASE("Values of a sample keep their state: measured, below, detected, not detected") {
    const CellRules rules = point();
    const auto below = sample_value_in("< 2", "Fe", rules).value();
    CHECK(below.state == ValueState::below);
    CHECK(below.number == Decimal(2));
    CHECK(below.unit == "mg/kg");
    CHECK(sample_value_in("0", "Fe", rules).value().state == ValueState::measured);
    CHECK(sample_value_in("n.d.", "glycol", rules).value().state == ValueState::not_detected);
    CHECK(sample_value_in("Detected", "water", rules).value().state == ValueState::detected);
    CHECK(sample_value_in("120 ppm", "water", rules).value().unit == "mg/kg");
    CHECK(sample_value_in("13.9 cSt", "kv100", rules).value().unit == "mm2/s");
    CHECK_FALSE(sample_value_in(">40", "Fe", rules));
    CHECK_FALSE(sample_value_in("trace", "Fe", rules));
    CHECK_FALSE(sample_value_in("7 g", "Fe", rules));
}

TEST_CASE("Whole numbers have no decimals and fit") {
    CHECK(whole_in("12", point()).value() == 12U);
    CHECK_FALSE(whole_in("12.5", point()));
    CHECK_FALSE(whole_in("-1", point()));
    CHECK_FALSE(whole_in("99999999999", point()));
}
