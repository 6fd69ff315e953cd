// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/due_words.h"

#include "tests/catch.h"
#include "tests/model/bike_log.h"

using namespace sumpbook;
using namespace sumpbook::testing;
using namespace sumpbook::compose;
using upkeep::DueItem;
using upkeep::DueState;
using upkeep::LimitKind;

namespace {

Distance whole_km(std::int64_t km) { return Distance::from_whole_km(km); }

DueItem oil(DueState state, std::int64_t km_today) {
    DueItem item;
    item.slug = "engine-oil";
    item.label = "Engine oil";
    item.state = state;
    item.decided_by = LimitKind::distance;
    item.limits.distance =
        upkeep::DistanceLimit{whole_km(12000), whole_km(6000), whole_km(600), whole_km(600)};
    item.now = {day("2024-06-01"), whole_km(km_today), {}};
    return item;
}

DueItem inspection(DueState state, std::string_view today) {
    DueItem item;
    item.state = state;
    item.decided_by = LimitKind::date;
    item.limits.date = upkeep::DateLimit{day("2024-06-01"), 730, 0, 73};
    item.now.date = day(today);
    return item;
}

} // namespace

TEST_CASE("Limits stand side by side") {
    auto item = oil(DueState::later, 8000);
    CHECK(limit_words(item) == "12 000 km");
    item.limits.hours = upkeep::HoursLimit{240, 100, 10, 10};
    item.limits.date = upkeep::DateLimit{day("2025-03-03"), 365, 36.5, 36.5};
    CHECK(limit_words(item) == "12 000 km or 240.0 h or 3 Mar 2025");
    CHECK(limit_words(DueItem{}) == "-");
}

TEST_CASE("Where the limit stands") {
    CHECK(standing_words(oil(DueState::later, 11340)) == "in 660 km");
    CHECK(standing_words(oil(DueState::due, 12000)) == "reached");
    auto item = oil(DueState::overdue, 12700);
    CHECK(standing_words(item) == "700 km past");
    item.estimated = true;
    CHECK(standing_words(item) == "about 700 km past");
    CHECK(standing_words(inspection(DueState::soon, "2024-05-31")) == "in 1 day");
    CHECK(standing_words(inspection(DueState::due, "2024-06-01")) == "today");
    CHECK(standing_words(inspection(DueState::overdue, "2024-06-13")) == "12 days past");
}

TEST_CASE("Distances stand as the dial shows them") {
    auto item = oil(DueState::later, 11000);
    item.dial_offset = whole_km(10000);
    CHECK(limit_words(item) == "2 000 km");
    CHECK(standing_words(item) == "in 1 000 km");
    item.dial_unit = DistanceUnit::mi;
    CHECK(limit_words(item) == "1 243 mi");
}

TEST_CASE("The reason says what it rests on") {
    auto item = oil(DueState::due, 12100);
    item.estimated = true;
    CHECK(reason_words(item) ==
          "The limit is 12 000 km, its window ends at 12 600 km; about 100 km past. The "
          "distance of today is an estimate: 12 100 km.");
    item = DueItem{};
    item.slug = "engine-oil";
    item.unknown_because = upkeep::UnknownBecause::never_recorded;
    CHECK(reason_words(item).find("plan baseline engine-oil") != std::string::npos);
    CHECK(standing_words(item) == "never recorded here");
    item.state = DueState::due; // an open recall
    CHECK(standing_words(item) == "open");
}

TEST_CASE("How a job lay to its limits, with the amounts that make it so") {
    upkeep::TimedJob timed{upkeep::Timing::late, whole_km(110), -12, {}};
    CHECK(timing_words(timed, DistanceUnit::km) == "late by 110 km");
    timed.past_days = 40;
    CHECK(timing_words(timed, DistanceUnit::km) == "late by 110 km and 40 days");
    timed = {upkeep::Timing::early, whole_km(-1500), -60, {}};
    CHECK(timing_words(timed, DistanceUnit::km) == "early by 1 500 km and 60 days");
    timed.timing = upkeep::Timing::in_window;
    CHECK(timing_words(timed, DistanceUnit::km) == "in window");
}

TEST_CASE("When it was done, by whose word") {
    upkeep::Done done;
    done.at = {day("2024-03-03"), whole_km(6010), {}};
    CHECK(done_words(done, DueItem{}) == "3 Mar 2024 at 6 010 km");
    done.distance_estimated = true;
    done.baseline = true;
    CHECK(done_words(done, DueItem{}) == "3 Mar 2024 at about 6 010 km, by your word");
    CHECK(not_computed_words({LimitKind::distance, LimitKind::hours}) == "distance, hours");
}
