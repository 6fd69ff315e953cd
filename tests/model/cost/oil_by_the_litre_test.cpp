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

TEST_CASE("Litres filled in count at the mean price of the litres in the can") {
    BikeLog log;
    log.add("2024-01-01", can("4 L can")).value.paid = money("40.00");
    log.add("2024-02-01", change("3"));
    log.add("2024-03-01", can("1 L")).value.paid = money("15.00");
    log.add("2024-04-01", change("1.5"));
    const auto spent = cost::spending_of(log.bike, by_the_litre());
    REQUIRE(spent.size() == 2);
    CHECK(spent[0].amount == money("30.00"));
    CHECK(spent[1].amount == money("18.75")); // 2 L for 25: 12.50 a litre
    CHECK(spent[0].category == "oil");
    CHECK(OilCans(log.bike, by_the_litre()).left()->money == money("6.25"));
}

TEST_CASE("What was bought is what was used and what is left, to the cent") {
    BikeLog log;
    std::int64_t bought = 0;
    for (const auto* price : {"38.90", "39.90", "41.53", "47.91"}) {
        log.add("2023-01-02", can("4 L can")).value.paid = money(price);
        bought += money(price).minor;
    }
    std::int64_t own = 0;
    for (const auto* date : {"2023-02-01", "2023-03-01", "2023-04-01"}) {
        log.add(date, change("3.7")).value.paid = money("13.90");
        own += 1390;
    }
    log.add("2023-05-01", TopUp{.volume = litres("0.33")});
    const auto used = [&] {
        return cost::total_of(cost::spending_of(log.bike, by_the_litre())).amounts().at(0).minor;
    };
    auto left = OilCans(log.bike, by_the_litre()).left();
    REQUIRE(left);
    CHECK(left->volume == Volume::from_litres(16 - 3 * 3.7 - 0.33));
    CHECK(used() + left->money.minor == bought + own);
    CHECK(used() > own + bought / 2); // most of the oil is in
    // More than the can holds takes what it holds.
    log.add("2023-06-01", change("9"));
    CHECK_FALSE(OilCans(log.bike, by_the_litre()).left());
    CHECK(used() == bought + own);
}

TEST_CASE("A workshop's bill has the oil in it; gearbox oil and coolant do not come from the can") {
    BikeLog log;
    log.add("2024-01-01", can("4 L can")).value.paid = money("40.00");
    auto& invoice = log.add("2024-02-01", change("3"));
    invoice.value.paid = money("62.00");
    invoice.value.evidence = Evidence::invoice;
    auto& same_visit = log.add("2024-03-01", change("3"));
    same_visit.value.paid = money("58.00");
    same_visit.value.visit = "A-1";
    log.add("2024-03-01", Work{.done_by = DoneBy::workshop}).value.visit = "A-1";
    OilChange coolant = change("2");
    coolant.compartment = "coolant";
    log.add("2024-04-01", coolant);
    const OilCans cans(log.bike, by_the_litre());
    CHECK(cans.left()->money == money("40.00"));
    CHECK(cost::total_of(cost::spending_of(log.bike, by_the_litre())).amounts() ==
          std::vector<Money>{money("120.00")});
}

TEST_CASE("A can of no known volume counts when bought") {
    BikeLog log;
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
    CHECK_FALSE(OilCans(log.bike, settings).worth_of_oil_in(log.bike.log[0].id));
    CHECK(cost::spending_of(log.bike, settings).empty());
    CHECK(OilCans(log.bike, settings).left()->money == money("40.00"));
}
