// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/quantity/temperature.h"

#include "tests/catch.h"

using namespace sumpbook;

TEST_CASE("The two scales meet at the fixed points", "[temperature]") {
    // Definition of the Fahrenheit scale: water freezes at 32 and boils at 212 degrees; both scales agree at
    // -40.
    CHECK(celsius_of({Decimal(32), TemperatureUnit::fahrenheit}) == Approx(0).margin(1e-12));
    CHECK(celsius_of({Decimal(212), TemperatureUnit::fahrenheit}) == Approx(100));
    CHECK(celsius_of({Decimal(-40), TemperatureUnit::fahrenheit}) == Approx(-40));
    CHECK(celsius_of({Decimal(100), TemperatureUnit::celsius}) == 100);
    CHECK(temperature_in(TemperatureUnit::fahrenheit, 100) == Approx(212));
    CHECK(temperature_in(TemperatureUnit::celsius, 100) == 100);
    CHECK(text_of(WrittenTemperature{Decimal(-5), TemperatureUnit::celsius}) == "-5 \u00B0C");
}
