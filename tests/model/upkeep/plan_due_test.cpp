// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/upkeep/plan_due.h"

#include "tests/catch.h"
#include "tests/model/bike_log.h"

using namespace sumpbook;
using namespace sumpbook::testing;
using namespace sumpbook::upkeep;

namespace {

Distance whole_km(std::int64_t km) { return Distance::from_whole_km(km); }

std::optional<DueItem> due_on(const BikeLog& log, std::string_view slug, std::string_view today) {
    const BikeToday bike(log.bike, day(today));
    return plan_due(find_plan_item(bike.bike(), slug)->value, bike);
}

/// Ridden from new, 10 km a day.
BikeLog from_new() {
    BikeLog log;
    log.bike.details.value.in_service_date = day("2023-01-01");
    log.bike.details.value.in_service_odometer = km("0");
    log.reading("2023-01-01", "0");
    return log;
}

} // namespace

TEST_CASE("After a job the next limit is one interval on") {
    auto log = from_new();
    auto& oil = log.plan("engine-oil");
    oil.repeat.distance = km("6000");
    oil.repeat.months = 12;
    log.work("2023-04-11", "1000", {"engine-oil"});
    log.reading("2023-07-20", "2000");
    const auto due = due_on(log, "engine-oil", "2023-07-20");
    REQUIRE(due);
    CHECK(due->bike == "Tourer");
    CHECK(due->limits.distance->at == whole_km(7000));
    CHECK(due->limits.date->at == day("2024-04-11"));
    CHECK(due->state == DueState::later);
    CHECK_FALSE(due->estimated);
    CHECK(due->date_p50 == day("2024-04-11")); // 5 000 km more take longer
    CHECK(due->date_from == LimitKind::date);
    CHECK(due->date_p10 <= due->date_p50);
    CHECK(due->date_p90 == day("2024-04-11"));
    REQUIRE(due->last_done() != nullptr);
    CHECK(due->last_done()->done.entry_id == "k7-2");
}

TEST_CASE("A state that rests on an estimate of today's distance says so") {
    auto log = from_new();
    log.plan("engine-oil").repeat.distance = km("1000");
    log.work("2023-04-11", "1000", {"engine-oil"});
    const auto due = due_on(log, "engine-oil", "2023-11-01");
    REQUIRE(due);
    const BikeToday bike(log.bike, day("2023-11-01"));
    CHECK(due->now.distance == bike.outlook().today()->distance);
    CHECK(due->now.distance >= whole_km(2000));
    CHECK(due->state == DueState::overdue);
    CHECK(due->estimated);
    CHECK(due->date_p50 <= day("2023-11-01"));
    CHECK(due->reading_age_days == 204);
    CHECK(*due->chance_passed >= 0.5);
}

TEST_CASE("A first service at 1 000 km, done at 1 090 and at 1 110") {
    for (const auto& [odometer, timing] : {std::pair{"1090", Timing::in_window}, {"1110", Timing::late}}) {
        auto log = from_new();
        auto& service = log.plan("first-service");
        service.first.distance = km("1000");
        log.work("2023-04-20", odometer, {"first-service"});
        const BikeToday bike(log.bike, day("2023-05-01"));
        const auto history = history_of(service, bike);
        REQUIRE(history.size() == 1);
        REQUIRE(history[0].timed);
        CHECK(history[0].timed->timing == timing);
        CHECK(history[0].timed->past_distance == *distance_of(km(odometer)) - whole_km(1000));
        CHECK_FALSE(plan_due(service, bike)); // done once and over
    }
}

TEST_CASE("A bike bought used: what was never recorded is unknown") {
    BikeLog log;
    log.plan("engine-oil").repeat.distance = km("6000");
    log.plan("valve-clearance").repeat.distance = km("42000");
    log.reading("2023-01-01", "23400");
    log.reading("2023-06-01", "25000");
    const auto oil = due_on(log, "engine-oil", "2023-06-01");
    CHECK(oil->state == DueState::unknown);
    CHECK(oil->unknown_because == UnknownBecause::never_recorded);
    CHECK_FALSE(oil->limits.any());
    const auto valves = due_on(log, "valve-clearance", "2023-06-01");
    CHECK(valves->state == DueState::later);
    CHECK(valves->limits.distance->at == whole_km(42000));
}

TEST_CASE("A baseline counts as done, and the first limits no longer apply") {
    BikeLog log;
    auto& oil = log.plan("engine-oil");
    oil.first.distance = km("1000");
    oil.repeat.distance = km("6000");
    log.reading("2023-01-01", "23400");
    Versioned<Baseline> baseline;
    baseline.value = {"engine-oil", day("2022-09-01"), km("22000"), {}, Evidence::stamp};
    log.bike.baselines.push_back(baseline);
    const auto due = due_on(log, "engine-oil", "2023-01-01");
    CHECK(due->limits.distance->at == whole_km(28000));
    CHECK(due->state == DueState::later);
    REQUIRE(due->history.size() == 1);
    CHECK_FALSE(due->history[0].timed);
}

TEST_CASE("A limit that cannot be computed is listed and ignored") {
    BikeLog log;
    auto& oil = log.plan("engine-oil");
    oil.repeat.distance = km("6000");
    oil.repeat.months = 12;
    log.work("2023-01-01", "", {"engine-oil"});
    const auto due = due_on(log, "engine-oil", "2024-01-01");
    CHECK(due->state == DueState::due);
    CHECK(due->decided_by == LimitKind::date);
    CHECK(due->not_computed == std::vector<LimitKind>{LimitKind::distance});
}

TEST_CASE("Without any limit that can be computed it is unknown, with the reason") {
    BikeLog log;
    log.plan("engine-oil").repeat.distance = km("6000");
    log.plan("brake-fluid").repeat.months = 24;
    log.plan("air-filter");
    CHECK(due_on(log, "engine-oil", "2024-01-01")->unknown_because == UnknownBecause::no_reading);
    CHECK(due_on(log, "brake-fluid", "2024-01-01")->unknown_because == UnknownBecause::no_start);
    CHECK(due_on(log, "air-filter", "2024-01-01")->unknown_because == UnknownBecause::no_limit);
}

TEST_CASE("A statutory item is overdue the day after") {
    auto log = from_new();
    auto& inspection = log.plan("inspection");
    inspection.kind = PlanKind::statutory;
    inspection.repeat.months = 24;
    CHECK(due_on(log, "inspection", "2025-01-01")->state == DueState::due);
    CHECK(due_on(log, "inspection", "2025-01-02")->state == DueState::overdue);
    CHECK(due_on(log, "inspection", "2024-12-20")->state == DueState::soon);
}

TEST_CASE("Hours without a meter come from the distance") {
    auto log = from_new();
    log.plan("engine-oil").repeat.hours = number("100"); // 5 000 km at 50 km/h
    log.reading("2024-05-10", "4950");
    const auto due = due_on(log, "engine-oil", "2024-05-10");
    CHECK(due->limits.hours->at_hours == Approx(100));
    CHECK(*due->now.engine_hours == Approx(99));
    CHECK(due->state == DueState::soon);
    const BikeToday bike(log.bike, day("2024-05-10"));
    CHECK(due->date_from == LimitKind::hours);
    CHECK(due->date_p50 == bike.outlook().day_reaching(whole_km(5000), 0.5));
    CHECK(due->date_p10 == bike.outlook().day_reaching(whole_km(5000), 0.1));
    CHECK(due->date_p90 == bike.outlook().day_reaching(whole_km(5000), 0.9));

    log.bike.details.value.average_speed_km_h = number("40"); // 100 h are 4 000 km
    CHECK(due_on(log, "engine-oil", "2024-05-10")->state == DueState::overdue);
}

TEST_CASE("An even chance of reaching the distance within 30 days is soon, before the lead begins") {
    auto log = from_new();
    auto& oil = log.plan("engine-oil");
    oil.repeat.distance = km("6000");
    oil.lead = Margin{km("10"), {}, {}};
    for (int month = 1; month <= 12; ++month)
        log.reading(iso_text(plus_months(day("2023-01-01"), month)), std::to_string(month * 450));
    const auto due = due_on(log, "engine-oil", "2024-01-01"); // 600 km to go at 450 km a month
    CHECK(due->state == DueState::later);
    log.reading("2024-01-02", "5800"); // 200 km to go
    const auto near = due_on(log, "engine-oil", "2024-01-02");
    const BikeToday bike(log.bike, day("2024-01-02"));
    CHECK(bike.outlook().day_reaching(whole_km(6000), 0.5, day("2024-02-01")));
    CHECK(near->state == DueState::soon);
}

TEST_CASE("Every job is held against the limits that stood before it") {
    auto log = from_new();
    log.plan("engine-oil").repeat.distance = km("1000");
    log.work("2023-03-01", "850", {"engine-oil"});  // 150 before 1 000
    log.work("2023-06-01", "1900", {"engine-oil"}); // 50 past 1 850
    log.work("2023-12-01", "3050", {"engine-oil"}); // 150 past 2 900
    const BikeToday bike(log.bike, day("2024-01-01"));
    const auto history = history_of(log.bike.plan[0].value, bike);
    REQUIRE(history.size() == 3);
    CHECK(history[0].timed->timing == Timing::early);
    CHECK(history[1].timed->timing == Timing::in_window);
    CHECK(history[2].timed->timing == Timing::late);
    CHECK(history[2].timed->past_distance == whole_km(150));
}

TEST_CASE("A plan in force from a day neither judges nor lists what lies before it") {
    auto log = from_new();
    auto& item = log.plan("engine-oil");
    item.repeat.distance = km("1000");
    item.in_force_from = day("2023-06-01");
    log.work("2023-03-01", "500", {"engine-oil"});
    CHECK_FALSE(due_on(log, "engine-oil", "2023-05-31"));
    const auto due = due_on(log, "engine-oil", "2023-06-01");
    CHECK_FALSE(due->history[0].timed);
    CHECK(due->limits.distance->at == whole_km(1500));
}

TEST_CASE("A grid goes on from going into service") {
    auto log = from_new();
    auto& item = log.plan("engine-oil");
    item.repeat.distance = km("10000");
    item.counted_from = CountedFrom::grid;
    log.work("2024-01-01", "9200", {"engine-oil"});
    log.work("2025-01-01", "21500", {"engine-oil"});
    const auto due = due_on(log, "engine-oil", "2025-01-01");
    CHECK(due->limits.distance->at == whole_km(30000));
    CHECK(due->history[0].timed->timing == Timing::in_window);
    CHECK(due->history[1].timed->timing == Timing::late);
    CHECK(due->history[1].timed->past_distance == whole_km(1500));
}

TEST_CASE("What lies after the day looked from is not seen") {
    auto log = from_new();
    log.plan("engine-oil").repeat.distance = km("1000");
    log.work("2023-04-11", "1000", {"engine-oil"});
    log.work("2023-07-20", "2000", {"engine-oil"});
    CHECK(due_on(log, "engine-oil", "2023-05-01")->limits.distance->at == whole_km(2000));
}
