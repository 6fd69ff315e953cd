// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/upkeep/later_times.h"

#include "model/upkeep/due.h"
#include "tests/catch.h"
#include "tests/model/bike_log.h"

using namespace sumpbook;
using namespace sumpbook::testing;
using namespace sumpbook::upkeep;

namespace {

/// About 500 km a month from new, read to 1 Jan 2025 at 12 000 km.
BikeLog ridden() {
    BikeLog log;
    log.bike.details.value.in_service_date = day("2023-01-01");
    for (int month = 0; month <= 24; ++month)
        log.reading(iso_text(plus_months(day("2023-01-01"), month)), std::to_string(500 * month));
    return log;
}

DueItem only_item(const BikeLog& log, std::string_view today) {
    auto items = due_items({&log.bike}, day(today), {.later_times = true});
    REQUIRE(items.size() == 1);
    return std::move(items[0]);
}

} // namespace

TEST_CASE("Later times of a distance are crossings of the distances added up") {
    auto log = ridden();
    log.plan("engine-oil").repeat.distance = km("4000");
    log.work("2025-01-01", "12000", {"engine-oil"});
    const auto item = only_item(log, "2025-01-01");
    const BikeToday bike(log.bike, day("2025-01-01"));
    REQUIRE(item.later_times.size() >= 2);
    Distance at = Distance::from_whole_km(16'000);
    DayRange before{item.date_p10, item.date_p50, item.date_p90};
    for (const auto& time : item.later_times) {
        at += Distance::from_whole_km(4000);
        CHECK(time.p10 == bike.outlook().day_reaching(at, 0.1));
        CHECK(time.p50 == bike.outlook().day_reaching(at, 0.5));
        CHECK(time.p90 == bike.outlook().day_reaching(at, 0.9));
        CHECK(time.p10 <= time.p50);
        CHECK(time.p50 <= time.p90);
        CHECK(before.p50 < time.p50);
        before = time;
    }
    CHECK(*before.p50 <= day("2028-01-01"));
    CHECK(bike.outlook().day_reaching(at + Distance::from_whole_km(4000), 0.5) > day("2028-01-01"));
}

TEST_CASE("Later times of a date are months on, without a range") {
    auto log = ridden();
    log.plan("brake-fluid").repeat.months = 12;
    log.work("2024-07-01", "", {"brake-fluid"});
    const auto item = only_item(log, "2025-01-01");
    CHECK(item.date_p50 == day("2025-07-01"));
    REQUIRE(item.later_times.size() == 2);
    CHECK(item.later_times[0] == DayRange{day("2026-07-01"), day("2026-07-01"), day("2026-07-01")});
    CHECK(item.later_times[1].p50 == day("2027-07-01"));
}

TEST_CASE("Where the date comes first, the distance goes on from what was ridden by that day") {
    auto log = ridden();
    auto& oil = log.plan("engine-oil");
    oil.repeat.distance = km("5000"); // 10 months
    oil.repeat.months = 6;
    log.work("2025-01-01", "12000", {"engine-oil"});
    const auto item = only_item(log, "2025-01-01");
    CHECK(item.date_p50 == day("2025-07-01"));
    REQUIRE_FALSE(item.later_times.empty());
    CHECK(item.later_times[0].p50 == day("2026-01-01"));
    CHECK(item.later_times[0].p90 <= day("2026-01-01"));
    CHECK(item.later_times[0].p10 <= item.later_times[0].p50);
}

TEST_CASE("What is overdue is done today, and counted from there") {
    auto log = ridden();
    log.plan("chain-clean").repeat.months = 4;
    log.work("2024-01-01", "", {"chain-clean"});
    const auto item = only_item(log, "2025-01-01");
    CHECK(item.state == DueState::overdue);
    REQUIRE_FALSE(item.later_times.empty());
    CHECK(item.later_times[0].p50 == day("2025-05-01"));
    CHECK(item.later_times.size() == most_later_times);
}

TEST_CASE("A payment comes again until its series ends; what is done once does not") {
    auto log = ridden();
    Cost tax;
    tax.category = "tax";
    tax.every_months = 12;
    tax.until = day("2027-01-01");
    log.add("2024-06-01", tax);
    const auto item = only_item(log, "2025-01-01");
    REQUIRE(item.later_times.size() == 1);
    CHECK(item.later_times[0].p50 == day("2026-06-01"));

    auto once = ridden();
    once.plan("first-service").first.distance = km("13000");
    CHECK(only_item(once, "2025-01-01").later_times.empty());
}
