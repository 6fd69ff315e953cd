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
using upkeep::ReasonInput;

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
    auto half = oil(DueState::later, 8000);
    half.planned.distance = WrittenDistance{Decimal(6000), DistanceUnit::km};
    half.planned.months = 24;
    half.not_computed = {LimitKind::date};
    CHECK(limit_words(half) == "12 000 km or 24 months, not known from when");
    auto by_date = inspection(DueState::later, "2024-05-01");
    by_date.planned = half.planned;
    by_date.not_computed = {LimitKind::distance};
    CHECK(limit_words(by_date) == "1 Jun 2024 or 6 000 km, not known from what");
    half.limits = {};
    CHECK(limit_words(half) == "-"); // its state is unknown, and says why
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

TEST_CASE("When it is expected is a stretch where there is one") {
    auto item = oil(DueState::later, 5000);
    item.now.date = day("2026-11-01");
    CHECK(expected_words(item) == "-");
    item.date_from = LimitKind::distance;
    item.date_p10 = day("2026-12-12");
    item.date_p50 = day("2027-01-24");
    item.date_p90 = day("2027-03-03");
    CHECK(expected_words(item) == "12 Dec 2026 to 3 Mar 2027, about 24 Jan");
    item.date_p10 = day("2027-01-02");
    CHECK(expected_words(item) == "2 Jan to 3 Mar 2027, about 24 Jan");
    item.date_p90.reset();
    CHECK(expected_words(item) == "about 24 Jan 2027, or much later");
    item.date_from = LimitKind::date;
    item.date_p90 = item.date_p50;
    CHECK(expected_words(item) == "on 24 Jan 2027, perhaps from 2 Jan on");
    item.date_p10 = item.date_p50;
    CHECK(expected_words(item) == "on 24 Jan 2027");
    item.now.date = day("2027-02-01");
    CHECK(expected_words(item) == "reached 24 Jan 2027");
}

TEST_CASE("Chances are told in tens, and not where there is one day only") {
    CHECK(chances_words({day("2026-12-12"), day("2027-01-24"), day("2027-03-03")}) ==
          "one chance in ten by 12 Dec 2026, an even chance by 24 Jan 2027, nine in ten by 3 Mar 2027");
    CHECK(chances_words({day("2027-01-24"), day("2027-01-24"), day("2027-01-24")}).empty());
    CHECK(chances_words({}).empty());
}

TEST_CASE("A reason stands in numbers, with the day without it") {
    auto item = oil(DueState::later, 5000);
    item.date_from = LimitKind::distance;
    item.date_p50 = day("2027-01-24");
    const auto text = [&](ReasonInput input, double value, int moves, unsigned month = 0) {
        return reason_text({input, plus_days(*item.date_p50, -moves), moves, value, month}, item);
    };
    CHECK(text(ReasonInput::riding, 5113.5, -40)
              .starts_with("your riding is about 5 114 km a year, 14 km a day: "
                           "40 days earlier than for a bike without a record"));
    CHECK(
        text(ReasonInput::season, 0.32, 12, 6) ==
        "320 of every 1 000 km fall in June to August: 12 days later than if every month were alike (12 Jan "
        "2027)");
    CHECK(text(ReasonInput::season, 0.32, 12, 12)
              .starts_with("320 of every 1 000 km fall in December to February"));
    CHECK(text(ReasonInput::layups, 150, 1).starts_with("laid up about 150 days a year: 1 day later"));
    CHECK(text(ReasonInput::layups, 0, 70).starts_with("a lay-up is planned: 70 days later"));
    CHECK(text(ReasonInput::reading_age, 41, -41)
              .starts_with("the last reading is 41 days old: 41 days earlier"));
    CHECK(text(ReasonInput::since_last, 4013, -9).starts_with("4 013 km remain of "));
    CHECK(text(ReasonInput::since_last, -300, -9).starts_with("300 km past its "));
    item.date_from = LimitKind::date;
    item.limits.date = upkeep::DateLimit{day("2027-01-24"), 365, 36.5, 36.5};
    CHECK(text(ReasonInput::since_last, 80, -9).starts_with("80 days remain of 365 days"));
    CHECK(reason_text({ReasonInput::date_limit, {}, {}, 0, 0}, item) ==
          "its time ends on 24 Jan 2027; without that it would have no day");
}

TEST_CASE("An old reading is told of from the 31st day on") {
    auto item = oil(DueState::later, 5000);
    CHECK(stale_words(item).empty());
    item.reading_age_days = 30;
    CHECK(stale_words(item).empty());
    item.reading_age_days = 31;
    CHECK(stale_words(item) == "The last reading is 31 days old: read your odometer.");
}
