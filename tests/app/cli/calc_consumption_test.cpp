// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/calc_consumption.h"

#include "tests/catch.h"

using namespace sumpbook;
using namespace sumpbook::cli;
using Words = std::vector<std::string>;

namespace {

double litres_per_100km(const Words& words) {
    return read_consumption(words, DecimalMark::unknown).value().litres_per_100km;
}

} // namespace

TEST_CASE("a volume and a distance in either order, in quotes or not", "[calc]") {
    CHECK(litres_per_100km({"12.3", "L", "250", "km"}) == Approx(4.92));
    CHECK(litres_per_100km({"12.3 L", "250 km"}) == Approx(4.92));
    CHECK(litres_per_100km({"250km", "12.3L"}) == Approx(4.92));
    CHECK(litres_per_100km({"1", "234,5", "L", "25", "000", "km"}) == Approx(4.938));
    // 2.7 x 4.54609 L over 150 x 1.609344 km
    CHECK(litres_per_100km({"2.7", "imp", "gal", "150", "mi"}) == Approx(5.084695));
}

TEST_CASE("one figure in any unit", "[calc]") {
    CHECK(litres_per_100km({"5", "L/100km"}) == 5);
    CHECK(litres_per_100km({"5", "L/100", "km"}) == 5);
    CHECK(litres_per_100km({"5", "L", "/", "100", "km"}) == 5);
    CHECK(litres_per_100km({"20 km/L"}) == 5);
    CHECK(litres_per_100km({"50", "mpg", "US"}) == Approx(4.704292).epsilon(1e-6)); // exact gallon and mile
}

TEST_CASE("an amount without its unit is refused, and so are gallons of no country", "[calc]") {
    for (const Words& words :
         {Words{"5"}, Words{"50", "mpg"}, Words{"10", "gal", "300", "mi"}, Words{"12.3", "L", "250"},
          Words{"12.3 L", "3 L"}, Words{"250 km", "3 km"}, Words{"12.3 L", "250 km", "7 h"}, Words{"km"},
          Words{}, Words{"0 L", "100 km"}, Words{"10 L", "0 km"}}) {
        CHECK_FALSE(read_consumption(words, DecimalMark::unknown).has_value());
    }
}
