// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/upkeep/recurring_costs.h"

#include "tests/catch.h"
#include "tests/model/bike_log.h"

using namespace sumpbook;
using namespace sumpbook::testing;
using namespace sumpbook::upkeep;

namespace {

Cost yearly(std::string category) {
    Cost cost;
    cost.category = std::move(category);
    cost.every_months = 12;
    return cost;
}

std::vector<DueItem> on(const BikeLog& log, std::string_view today) {
    return recurring_costs(BikeToday(log.bike, day(today)));
}

} // namespace

TEST_CASE("A cost that comes again is due one period after its last payment") {
    BikeLog log;
    log.add("2023-03-01", yearly("insurance")).value.paid = money("180.00");
    REQUIRE(on(log, "2023-06-01").size() == 1);
    const auto item = on(log, "2023-06-01")[0];
    CHECK(item.slug == "cost-insurance");
    CHECK(item.limits.date->at == day("2024-03-01"));
    CHECK(item.state == DueState::later);
    CHECK(item.estimate == money("180.00"));
    CHECK(on(log, "2024-02-15")[0].state == DueState::soon);
    CHECK(on(log, "2024-03-02")[0].state == DueState::overdue);

    Cost paid;
    paid.category = "insurance"; // the only series of its category
    log.add("2024-03-05", paid);
    CHECK(on(log, "2024-06-01")[0].limits.date->at == day("2025-03-05"));
}

TEST_CASE("The period it covers counts, not the day it was paid") {
    BikeLog log;
    auto insurance = yearly("insurance");
    insurance.covers_from = day("2023-04-01");
    log.add("2023-03-01", insurance);
    CHECK(on(log, "2023-06-01")[0].limits.date->at == day("2024-04-01"));
}

TEST_CASE("A series ends, and a valuation is none") {
    BikeLog log;
    auto storage = yearly("storage");
    storage.until = day("2024-02-01");
    log.add("2023-03-01", storage);
    auto valuation = yearly("gear");
    valuation.valuation = true;
    log.add("2023-03-01", valuation);
    CHECK(on(log, "2023-06-01").empty());
    auto monthly = yearly("parking");
    monthly.every_months = 1;
    monthly.until = day("2024-06-30");
    log.add("2022-01-15", monthly);
    CHECK(on(log, "2022-01-20").size() == 1);
    CHECK(on(log, "2024-06-30").size() == 1); // still owed
    CHECK(on(log, "2024-07-01").empty());     // over, not overdue for years
}

TEST_CASE("Two series of one category are told apart by their text") {
    BikeLog log;
    auto liability = yearly("insurance");
    liability.text = "liability";
    auto theft = yearly("insurance");
    theft.text = "theft";
    log.add("2023-03-01", liability);
    log.add("2023-05-01", theft);
    const auto items = on(log, "2023-06-01");
    REQUIRE(items.size() == 2);
    CHECK(items[0].limits.date->at == day("2024-03-01"));
    CHECK(items[1].limits.date->at == day("2024-05-01"));
}

TEST_CASE("Where the payment satisfies a plan item the plan says when") {
    BikeLog log;
    log.plan("insurance").repeat.months = 12;
    log.add("2023-03-01", yearly("insurance")).value.does = {"insurance"};
    CHECK(on(log, "2023-06-01").empty());
}

TEST_CASE("Series of one category have names of their own, whichever was recorded first") {
    auto road = yearly("tax");
    road.text = "Road tax, city";
    auto toll = yearly("tax");
    toll.text = "toll";
    BikeLog log;
    log.add("2023-03-01", road);
    CHECK(on(log, "2023-06-01").at(0).slug == "cost-tax");
    log.add("2023-02-01", toll);
    log.add("2023-04-01", yearly("tax"));
    const auto items = on(log, "2023-06-01");
    REQUIRE(items.size() == 3);
    CHECK(items[0].slug == "cost-tax-toll");
    CHECK(items[1].slug == "cost-tax-road-tax-city");
    CHECK(items[2].slug == "cost-tax");
}
