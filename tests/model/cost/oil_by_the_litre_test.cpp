// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/cost/oil_by_the_litre.h"

#include "model/cost/spent.h"
#include "tests/catch.h"
#include "tests/model/bike_log.h"

using namespace sumpbook;
using namespace sumpbook::testing;
using cost::OilCans;

namespace {

GarageSettings by_the_litre() {
    GarageSettings settings;
    settings.currency = Currency::from_code("EUR").value();
    settings.oil_bought_counts = OilBoughtCounts::per_litre_used;
    return settings;
}

Cost can(std::string text) {
    Cost cost;
    cost.category = "oil";
    cost.text = std::move(text);
    return cost;
}

OilChange change(std::string_view volume) {
    OilChange body;
    body.volume_in = litres(volume);
    return body;
}

} // namespace

TEST_CASE("The volume of a can is the first one its text names") {
    CHECK(cost::volume_named_in("4 L can of 10W-40") == Volume::from_litres(4));
    CHECK(cost::volume_named_in("mineral oil, 10W-40, 2x 1L") == Volume::from_litres(1));
    CHECK(cost::volume_named_in("500 mL") == Volume::from_litres(0.5));
    CHECK_FALSE(cost::volume_named_in("oil from the shelf"));
    CHECK_FALSE(cost::volume_named_in("10W-40"));
    CHECK_FALSE(cost::volume_named_in(""));
}

TEST_CASE("Litres filled in count at the mean price of the litres bought until then") {
    BikeLog log;
    log.add("2024-01-01", can("4 L can")).value.paid = money("40.00");
    log.add("2024-02-01", change("3"));
    log.add("2024-03-01", can("1 L")).value.paid = money("15.00");
    log.add("2024-04-01", change("2"));
    const auto spent = cost::spending_of(log.bike, by_the_litre());
    REQUIRE(spent.size() == 2);
    CHECK(spent[0].amount == money("30.00"));
    CHECK(spent[1].amount == money("22.00")); // 55 for 5 L: 11 a litre
    CHECK(spent[0].category == "oil");
}

TEST_CASE("A change that has its own price keeps it, and a can of no known volume counts when bought") {
    BikeLog log;
    log.add("2024-01-01", can("4 L can")).value.paid = money("40.00");
    log.add("2024-01-02", can("the good one")).value.paid = money("12.00");
    log.add("2024-02-01", change("3")).value.paid = money("80.00");
    const auto spent = cost::spending_of(log.bike, by_the_litre());
    REQUIRE(spent.size() == 2);
    CHECK(spent[0].amount == money("12.00"));
    CHECK(spent[1].amount == money("80.00"));
}

TEST_CASE("Before any can was bought the oil has no price") {
    BikeLog log;
    log.add("2024-01-01", change("3"));
    log.add("2024-02-01", can("4 L can")).value.paid = money("40.00");
    const auto settings = by_the_litre();
    CHECK_FALSE(OilCans(log.bike, settings).worth_of_oil_in(log.bike.log[0].value));
    CHECK(cost::spending_of(log.bike, settings).empty());
}
