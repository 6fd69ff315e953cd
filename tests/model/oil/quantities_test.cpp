// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/oil/quantities.h"
#include "tests/catch.h"

#include <set>

using namespace sumpbook;
using namespace sumpbook::oil;

namespace {

Decimal number(const char* text) { return Decimal::parse(text).value(); }

} // namespace

TEST_CASE("Quantities are found by slug, name and another spelling", "[oil]") {
    CHECK(find_quantity("Fe")->name == "iron");
    CHECK(find_quantity("fe")->slug == "Fe");
    CHECK(find_quantity("Aluminum")->slug == "Al");
    CHECK(find_quantity("aluminium")->slug == "Al");
    CHECK(find_quantity("Total Base Number")->slug == "tbn");
    CHECK(find_quantity("unobtainium") == nullptr);
    CHECK(quantity_name("kv100") == "viscosity at 100 C");
    CHECK(quantity_name("own thing") == "own thing");
}

TEST_CASE("Every quantity has a name of its own", "[oil]") {
    std::set<std::string> slugs;
    std::set<std::string> names;
    for (const Quantity& quantity : sample_quantities()) {
        slugs.insert(quantity.slug);
        names.insert(quantity.name);
    }
    CHECK(slugs.size() == sample_quantities().size());
    CHECK(names.size() == sample_quantities().size());
    CHECK(slugs.size() > 30);
}

TEST_CASE("Wear metals are the eight of the limit tables", "[oil]") {
    std::set<std::string> metals;
    for (const Quantity& quantity : sample_quantities()) {
        if (is_wear_metal(quantity.slug)) metals.insert(quantity.slug);
    }
    CHECK(metals == std::set<std::string>{"Fe", "Cr", "Al", "Cu", "Pb", "Sn", "Ni", "Ag"});
}

TEST_CASE("Units change only where that is exact", "[oil]") {
    CHECK(in_oil_unit(number("0.1"), "%", "mg/kg") == number("1000"));
    CHECK(in_oil_unit(number("1500"), "ppm", "% mass") == number("0.15"));
    CHECK(in_oil_unit(number("0.12"), "abs/0.1 mm", "abs/cm") == number("12"));
    CHECK(in_oil_unit(number("12"), "A/cm", "abs/0.1 mm") == number("0.12"));
    CHECK(in_oil_unit(number("14.2"), "cSt", "mm2/s") == number("14.2"));
    CHECK(in_oil_unit(number("0.3"), "%", "% vol") == number("0.3"));
    CHECK_FALSE(in_oil_unit(number("0.3"), "% vol", "% mass").has_value());
    CHECK_FALSE(in_oil_unit(number("3000"), "mg/kg", "% vol").has_value());
    CHECK_FALSE(in_oil_unit(number("12"), "abs/cm", "as reported").has_value());
    CHECK_FALSE(in_oil_unit(number("12"), "as reported", "abs/cm").has_value());
}
