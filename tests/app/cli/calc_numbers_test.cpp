// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/calc_numbers.h"

#include "tests/catch.h"

using namespace sumpbook;
using namespace sumpbook::cli;

TEST_CASE("a calculator takes 12.499 for twelve and a half, unless told otherwise", "[calc]") {
    CHECK(calc_number("kv100", "12.499", DecimalMark::unknown)->text() == "12.499");
    CHECK(calc_number("kv100", "12.499", DecimalMark::comma)->text() == "12499");
    CHECK(calc_number("kv100", "12,5", DecimalMark::unknown)->text() == "12.5");
    CHECK_FALSE(calc_number("kv100", "12,499", DecimalMark::unknown).has_value());
    CHECK(calc_number("kv100", "12,499", DecimalMark::comma)->text() == "12.499");
}

TEST_CASE("a refused number names its place and keeps what was typed", "[calc]") {
    const auto number = calc_number("kv100", "abc", DecimalMark::unknown);
    REQUIRE_FALSE(number.has_value());
    CHECK(number.error().place.column == "kv100");
    CHECK(number.error().place.text == "abc");
}

TEST_CASE("viscosities lie above 0", "[calc]") {
    CHECK_FALSE(calc_number_above_0("kv100", "0", DecimalMark::unknown).has_value());
    CHECK_FALSE(calc_number_above_0("kv100", "-1", DecimalMark::unknown).has_value());
    CHECK(calc_number_above_0("kv100", "0.001", DecimalMark::unknown).has_value());
}

TEST_CASE("an amount is a number and its unit, with or without a blank", "[calc]") {
    const auto amount = [](const char* text) {
        return calc_number_and_unit(text, DecimalMark::unknown).value();
    };
    CHECK(amount("12.499 L").number.text() == "12.499");
    CHECK(amount("12.499L").unit == "L");
    CHECK(amount("1 234,5 L").number.text() == "1234.5");
    CHECK(amount("5 L/100 km").unit == "L/100 km");
    CHECK(amount("5").unit.empty());
}

TEST_CASE("temperatures are in degrees Celsius unless a unit says otherwise", "[calc]") {
    CHECK(calc_celsius("t", "60", DecimalMark::unknown).value() == 60);
    CHECK(calc_celsius("t", "-20 C", DecimalMark::unknown).value() == -20);
    CHECK(calc_celsius("t", "140F", DecimalMark::unknown).value() == Approx(60));
    CHECK_FALSE(calc_celsius("t", "60 km", DecimalMark::unknown).has_value());
}
