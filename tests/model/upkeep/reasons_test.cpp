// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/upkeep/reasons.h"

#include "model/upkeep/due.h"
#include "tests/catch.h"
#include "tests/model/bike_log.h"

#include <algorithm>
#include <cstdlib>

using namespace sumpbook;
using namespace sumpbook::testing;
using namespace sumpbook::upkeep;

namespace {

constexpr std::string_view today = "2025-02-10";
constexpr std::string_view last_read = "2025-01-01";

/// 60 km a month, 1 000 in April to August; read to 1 Jan 2025; oil changed at the end of September.
BikeLog ridden() {
    BikeLog log;
    log.bike.details.value.in_service_date = day("2022-01-01");
    int at = 0;
    for (int month = 0; month <= 36; ++month) {
        log.reading(iso_text(plus_months(day("2022-01-01"), month)), std::to_string(at));
        at += month % 12 >= 3 && month % 12 <= 7 ? 1000 : 60;
    }
    auto& oil = log.plan("engine-oil");
    oil.repeat.distance = km("4000");
    oil.repeat.months = 18;
    log.work("2024-10-01", "16140", {"engine-oil"});
    return log;
}

DueItem item_of(const BikeLog& log, std::string_view on = today) {
    auto items = due_items({&log.bike}, day(on), {.reasons = true});
    REQUIRE(items.size() == 1);
    return std::move(items[0]);
}

const Reason* find(const DueItem& item, ReasonInput input) {
    const auto found = std::ranges::find(item.reasons, input, &Reason::input);
    return found == item.reasons.end() ? nullptr : &*found;
}
const Reason* find(DueItem&& gone, ReasonInput input) = delete;

} // namespace

TEST_CASE("The three that move the day most, most first, each against the day without it") {
    const auto item = item_of(ridden());
    REQUIRE(item.reasons.size() == 3);
    int before = 1'000'000;
    for (const auto& reason : item.reasons) {
        REQUIRE(reason.moves_days);
        REQUIRE(reason.without);
        CHECK(*reason.moves_days == days_between(*reason.without, *item.date_p50));
        CHECK(*reason.moves_days != 0);
        CHECK(std::abs(*reason.moves_days) <= before);
        before = std::abs(*reason.moves_days);
    }
}

TEST_CASE("Change an input and the answer moves the way the reason says") {
    const auto log = ridden();
    const auto item = item_of(log);
    CHECK(item.date_from == LimitKind::distance);

    SECTION("what has gone since the last time: as if done today") {
        const auto* reason = find(item, ReasonInput::since_last);
        REQUIRE(reason != nullptr);
        CHECK(*reason->moves_days < 0);
        CHECK(reason->value == Approx((item.limits.distance->at - *item.now.distance).km()));
        const auto read_that_day = item_of(log, last_read);
        const auto* known = find(read_that_day, ReasonInput::since_last);
        REQUIRE(known != nullptr);
        auto changed = log;
        changed.work(last_read, "", {"engine-oil"});
        CHECK(item_of(changed, last_read).date_p50 == known->without);
    }
    auto first = log; // never done, with a first limit of its own
    first.bike.plan[0].value.first.distance = km("20000");
    std::erase_if(first.bike.log, [](const auto& e) { return !e.value.does.empty(); });
    SECTION("done today after a first service: the usual interval comes next, not the first one again") {
        const auto before = item_of(first, last_read);
        const auto* reason = find(before, ReasonInput::since_last);
        REQUIRE(reason != nullptr);
        auto done = first;
        done.work(last_read, "", {"engine-oil"});
        CHECK(item_of(done, last_read).date_p50 == reason->without);
    }
    SECTION("what comes once says nothing of doing it today") {
        auto once = first;
        once.bike.plan[0].value.repeat = {};
        const auto before = item_of(once);
        CHECK(before.date_p50);
        CHECK(find(before, ReasonInput::since_last) == nullptr);
    }
    SECTION("the riding: half of it") {
        const auto* reason = find(item, ReasonInput::riding);
        REQUIRE(reason != nullptr);
        CHECK(*reason->moves_days < 0); // more than the 2 500 km a year of a bike unknown
        CHECK(reason->value > 4000);
        BikeLog changed;
        for (const auto& entry : log.bike.log) {
            const auto half = decimal_from_double(entry.value.odometer->number.to_double() / 2, 0).text();
            if (entry.value.does.empty()) changed.reading(iso_text(entry.value.date), half);
        }
        auto& oil = changed.plan("engine-oil");
        oil.repeat.distance = km("4000");
        changed.work("2024-10-01", "8070", {"engine-oil"});
        CHECK(item_of(changed).date_p50 > item.date_p50);
    }
}

TEST_CASE("A limit on the date that comes first is named, with the day the distance would give") {
    auto log = ridden();
    log.bike.plan[0].value.repeat.months = 6;
    const auto item = item_of(log);
    CHECK(item.date_from == LimitKind::date);
    const auto* reason = find(item, ReasonInput::date_limit);
    REQUIRE(reason != nullptr);
    CHECK(*reason->moves_days < 0);
    auto changed = log;
    changed.bike.plan[0].value.repeat.months.reset();
    CHECK(item_of(changed).date_p50 == reason->without);
}

TEST_CASE("A season: the same riding in every month moves the day") {
    auto log = ridden();
    log.bike.plan[0].value.repeat = {km("1000"), {}, {}};
    const auto item = item_of(log); // in winter, with little ridden
    const auto* reason = find(item, ReasonInput::season);
    REQUIRE(reason != nullptr);
    CHECK(reason->month >= 4);
    CHECK(reason->month <= 6);
    CHECK(reason->value > 0.4); // a quarter if every month were alike
    CHECK(*reason->moves_days > 0);
    BikeLog even;
    for (int month = 0; month <= 36; ++month)
        even.reading(iso_text(plus_months(day("2022-01-01"), month)), std::to_string(month * 5420 / 12));
    even.plan("engine-oil").repeat.distance = km("1000");
    even.work("2025-01-01", "", {"engine-oil"});
    const auto remaining = item.limits.distance->at - Distance::from_whole_km(16'260);
    even.bike.plan[0].value.repeat.distance =
        WrittenDistance{in_unit(remaining, DistanceUnit::km, 0), DistanceUnit::km};
    CHECK(item_of(even).date_p50 < item.date_p50);
}

TEST_CASE("A planned lay-up and an old reading move the day, and no longer when they are gone") {
    BikeLog log;
    for (int month = 0; month <= 12; ++month)
        log.reading(iso_text(plus_months(day("2024-01-01"), month)), std::to_string(month * 400));
    log.plan("engine-oil").repeat.distance = km("1000");
    log.work("2025-01-01", "4800", {"engine-oil"});
    log.add("2025-02-20", Layup{day("2025-06-30"), true});
    const auto item = item_of(log);
    const auto* layup = find(item, ReasonInput::layups);
    REQUIRE(layup != nullptr);
    CHECK(*layup->moves_days > 60);
    auto changed = log;
    std::erase_if(changed.bike.log,
                  [](const auto& e) { return std::holds_alternative<Layup>(e.value.body); });
    CHECK(item_of(changed).date_p50 == layup->without);

    const auto unread = item_of(changed);
    const auto* age = find(unread, ReasonInput::reading_age);
    REQUIRE(age != nullptr);
    CHECK(age->value == 40);
    CHECK(*age->moves_days < 0);
    auto read = changed;
    read.reading(today, "4800");
    CHECK(item_of(read).date_p50 == age->without);
    CHECK(item_of(read).date_p50 > unread.date_p50);
    const auto fresh = item_of(read);
    CHECK(find(fresh, ReasonInput::reading_age) == nullptr);
}

TEST_CASE("The only limit there is comes first: without it there is no day") {
    auto log = ridden();
    log.bike.plan[0].value.repeat = {{}, 24, {}};
    const auto item = item_of(log);
    REQUIRE(item.reasons.size() == 2);
    CHECK(item.reasons[0].input == ReasonInput::date_limit);
    CHECK_FALSE(item.reasons[0].moves_days);
    CHECK(item.reasons[1].input == ReasonInput::since_last);
    CHECK(item.reasons[1].moves_days == -days_between(day("2024-10-01"), day(today)));
}

TEST_CASE("Nothing is explained that has no day, or was not asked for") {
    auto log = ridden();
    CHECK(due_items({&log.bike}, day(today))[0].reasons.empty());
    BikeLog without_a_limit;
    without_a_limit.plan("air-filter");
    CHECK(item_of(without_a_limit).reasons.empty());
}
