// SPDX-License-Identifier: GPL-3.0-or-later
// Intervals, windows and inspections against published figures; sources stand in the tables.
#include "model/upkeep/inspections.h"
#include "model/upkeep/limits.h"
#include "model/upkeep/starter.h"
#include "model/upkeep/timing.h"

#include "tests/catch.h"
#include "tests/model/bike_log.h"
#include "tests/outside/check_table.h"
#include "tests/outside/numbers.h"

#include <algorithm>
#include <map>

using namespace sumpbook;
using namespace sumpbook::outside;
using namespace sumpbook::upkeep;
using sumpbook::testing::day;
using sumpbook::testing::miles;

namespace {

PlanItem every(std::optional<WrittenDistance> distance, std::optional<int> months) {
    PlanItem item;
    item.repeat.distance = distance;
    item.repeat.months = months;
    return item;
}

Moment at_miles(const std::string& odometer, std::string_view date = "2024-01-01") {
    return {day(date), distance_of(miles(odometer)).value(), {}};
}

/// Items of the starter plan by the row of the table they rest on.
const std::map<std::string, std::vector<std::string>>& items_by_row() {
    static const std::map<std::string, std::vector<std::string>> items{
        {"running-in inspection and oil", {"first-service"}},
        {"engine oil and filter", {"engine-oil", "oil-filter"}},
        {"chain clean and lubricate", {"chain-clean"}},
        {"chain slack check", {"chain-adjust"}},
        {"chain and sprockets replace", {"chain-set"}},
        {"valve clearance check", {"valve-clearance"}},
        {"spark plugs", {"spark-plugs"}},
        {"air filter inspect / replace", {"air-filter"}},
        {"coolant", {"coolant"}},
        {"brake fluid", {"brake-fluid"}},
        {"clutch fluid (hydraulic)", {"clutch-fluid"}},
        {"brake pad inspection", {"brake-pads"}},
        {"fork oil", {"fork-oil"}},
        {"steering head bearings", {"steering-bearings"}},
        {"wheel bearings check", {"wheel-bearings"}},
        {"battery test", {"battery"}},
        {"tyres by age", {"tyres"}}};
    return items;
}

std::vector<PlanItem> fullest_starter_plan() {
    BikeDetails bike;
    bike.compartments = {{"clutch", sumpbook::testing::litres("0.1"), {}}};
    return starter_plan(bike, std::nullopt, std::nullopt);
}

} // namespace

TEST_CASE("The window of an interval, TM 9-2320-387-24-1 p. 2-10", "[outside][upkeep]") {
    const CheckRow& row = check_row("std-oil-life-rules.csv", "due-window tolerance");
    TESTING_ROW(row); // "3,000 mi -> 2,700 to 3,300"
    CHECK(row["worked_check"] == "3,000 mi -> 2,700 to 3,300");
    const auto limits = first_limits(every(miles("3000"), {}), at_miles("0"));
    CHECK(timed(limits, at_miles("2699.9"))->timing == Timing::early);
    CHECK(timed(limits, at_miles("2700"))->timing == Timing::in_window);
    CHECK(timed(limits, at_miles("3300"))->timing == Timing::in_window);
    CHECK(timed(limits, at_miles("3300.1"))->timing == Timing::late);
}

TEST_CASE("Whichever comes first: 6 months or 3,000 mi", "[outside][upkeep]") {
    const CheckRow& row = check_row("std-oil-life-rules.csv", "whichever-first and low-use rule");
    TESTING_ROW(row);
    // "6 months or 3,000 mi (4,828 km), 12 months or 6,000 mi (9,656 km), 24 months or 12,000 mi (19,310 km)"
    for (const auto& [months, distance, km] :
         {std::tuple{6, "3000", 4828}, {12, "6000", 9656}, {24, "12000", 19312}}) {
        const auto limits = first_limits(every(miles(distance), months), at_miles("0", "2023-01-01"));
        CHECK(in_unit(limits.distance->at, DistanceUnit::km, 0) ==
              Decimal(km)); // printed 19,310: cut to tens
        CHECK(limits.date->at == plus_months(day("2023-01-01"), months));
    }
    // Far under the distance, the months alone make it late.
    const auto limits = first_limits(every(miles("3000"), 6), at_miles("0", "2023-01-01"));
    CHECK(timed(limits, at_miles("900", "2023-07-01"))->timing == Timing::in_window);
    CHECK(timed(limits, at_miles("900", "2023-09-01"))->timing == Timing::late);
}

TEST_CASE("Oil at least every 12 months", "[outside][upkeep]") {
    const CheckRow& row = check_row("std-oil-life-rules.csv", "calendar limit"); // common practice
    TESTING_ROW(row);
    const auto plan = fullest_starter_plan();
    const auto oil = std::ranges::find(plan, "engine-oil", &PlanItem::slug);
    REQUIRE(oil != plan.end());
    CHECK(oil->repeat.months == 12);
    CHECK(oil->repeat.distance);
}

TEST_CASE("A starter plan takes the low end of each range of common practice", "[outside][upkeep]") {
    const auto plan = fullest_starter_plan();
    for (const CheckRow& row : check_table("std-maintenance-ranges.csv")) {
        const auto items = items_by_row().find(row["item"]);
        if (items == items_by_row().end()) continue; // no starter item: in the list of skipped rows
        TESTING_ROW(row);
        for (const auto& slug : items->second) {
            const auto item = std::ranges::find(plan, slug, &PlanItem::slug);
            REQUIRE(item != plan.end());
            const Limits& limits = slug == "first-service" ? item->first : item->repeat;
            REQUIRE(limits.distance.has_value() == !row.empty("distance_low_km"));
            if (limits.distance) CHECK(limits.distance->number.to_double() == row.number("distance_low_km"));
            REQUIRE(limits.months.has_value() == !row.empty("months"));
            if (limits.months) CHECK(*limits.months == numbers_in(row["months"]).front());
            CHECK((item->source->find("from memory") != std::string::npos) ==
                  (row["status"] == "FROM MEMORY"));
        }
    }
}

TEST_CASE("Statutory inspections by country", "[outside][upkeep]") {
    struct Country {
        const char* code;
        int over_cm3; ///< 0: any engine.
    };
    const std::map<std::string, Country> countries{{"UK (Great Britain)", {"GB", 0}},
                                                   {"Germany", {"DE", 0}},
                                                   {"France", {"FR", 0}},
                                                   {"Spain", {"ES", 0}},
                                                   {"Italy", {"IT", 0}},
                                                   {"Japan", {"JP", 250}},
                                                   {"Cyprus", {"CY", 125}}};
    for (const CheckRow& row : check_table("std-inspections.csv")) {
        const auto country = countries.find(row["jurisdiction"]);
        if (country == countries.end()) continue; // set by state or region: in the list of skipped rows
        TESTING_ROW(row);
        const auto [code, over_cm3] = country->second;
        const auto item = statutory_inspection(code, over_cm3 + 1);
        REQUIRE(item);
        CHECK(item->first.months == static_cast<int>(row.number("first_due_months")));
        CHECK(item->repeat.months == static_cast<int>(row.number("then_every_months")));
        CHECK(item->source->find("check your authority") != std::string::npos);
        if (over_cm3 > 0) CHECK_FALSE(statutory_inspection(code, over_cm3));
    }
    CHECK_FALSE(statutory_inspection("US", 1000)); // by state
}
