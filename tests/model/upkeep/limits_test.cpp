// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/upkeep/limits.h"

#include "tests/catch.h"
#include "tests/model/bike_log.h"

#include <rapidcheck.h>

using namespace sumpbook;
using namespace sumpbook::testing;
using namespace sumpbook::upkeep;

namespace {

Distance whole_km(std::int64_t km) { return Distance::from_whole_km(km); }

PlanItem every(std::optional<WrittenDistance> distance, std::optional<int> months = {}) {
    PlanItem item;
    item.slug = "engine-oil";
    item.repeat.distance = distance;
    item.repeat.months = months;
    return item;
}

PlanItem on_grid(PlanItem item) {
    item.counted_from = CountedFrom::grid;
    return item;
}

Moment at(std::string_view date, std::int64_t km) { return {day(date), whole_km(km), {}}; }

Distance next_km_on_grid(std::int64_t job_km) {
    const Moment start{std::nullopt, Distance{}, {}};
    return limits_after(on_grid(every(km("10000"))), start, at("2024-05-01", job_km)).distance->at;
}

Date next_date_on_grid(std::string_view start, int months, std::string_view job,
                       PlanKind kind = PlanKind::upkeep) {
    auto item = on_grid(every({}, months));
    item.kind = kind;
    return limits_after(item, Moment{day(start), {}, {}}, Moment{day(job), {}, {}}).date->at;
}

} // namespace

TEST_CASE("Counted from the last time it was done, one interval on in each kind") {
    auto item = every(km("6000"), 12);
    item.repeat.hours = number("100");
    const auto next = limits_after(item, {}, Moment{day("2024-01-31"), whole_km(11500), 230.0});
    CHECK(next.distance->at == whole_km(17500));
    CHECK(next.distance->window == whole_km(600));
    CHECK(next.date->at == day("2025-01-31"));
    CHECK(next.date->interval_days == 366);
    CHECK(next.date->window_days == Approx(36.6));
    CHECK(next.hours->at_hours == Approx(330));
    CHECK(next.hours->window_hours == Approx(10));
}

TEST_CASE("Months end where the month ends") {
    CHECK(limits_after(every({}, 1), {}, at("2023-01-31", 0)).date->at == day("2023-02-28"));
    CHECK(limits_after(every({}, 1), {}, at("2024-01-31", 0)).date->at == day("2024-02-29"));
    CHECK(limits_after(every({}, 12), {}, at("2024-02-29", 0)).date->at == day("2025-02-28"));
}

TEST_CASE("On a distance grid a job counts for the last point it reaches with its window") {
    CHECK(next_km_on_grid(9200) == whole_km(20000));
    CHECK(next_km_on_grid(9000) == whole_km(20000));
    CHECK(next_km_on_grid(8900) == whole_km(10000));
    CHECK(next_km_on_grid(11500) == whole_km(20000));
    CHECK(next_km_on_grid(0) == whole_km(10000));
}

TEST_CASE("A date grid counts from its start, never month by month") {
    CHECK(next_date_on_grid("2023-01-31", 1, "2023-02-28") == day("2023-03-31"));
    CHECK(next_date_on_grid("2020-02-29", 12, "2023-02-28") == day("2024-02-29"));
    // A month before the point is inside the window of 36 days, two months before are not.
    CHECK(next_date_on_grid("2020-06-01", 12, "2023-05-01") == day("2024-06-01"));
    CHECK(next_date_on_grid("2020-06-01", 12, "2023-04-01") == day("2023-06-01"));
    CHECK(next_date_on_grid("2020-06-01", 12, "2010-01-01") == day("2021-06-01"));
}

TEST_CASE("A statutory grid has no window: the day before does not count") {
    CHECK(next_date_on_grid("2020-06-01", 12, "2023-05-31", PlanKind::statutory) == day("2023-06-01"));
    CHECK(next_date_on_grid("2020-06-01", 12, "2023-06-01", PlanKind::statutory) == day("2024-06-01"));
}

TEST_CASE("A grid in hours") {
    auto item = on_grid({});
    item.repeat.hours = number("100");
    const Moment start{{}, {}, 0.0};
    CHECK(limits_after(item, start, Moment{{}, {}, 92.0}).hours->at_hours == Approx(200));
    CHECK(limits_after(item, start, Moment{{}, {}, 89.0}).hours->at_hours == Approx(100));
}

TEST_CASE("Until it has been done once the first limits hold, without them the repeating ones") {
    auto item = every(km("6000"), 12);
    const Moment in_service = at("2024-03-01", 10);
    CHECK(first_limits(item, in_service).distance->at == whole_km(6010));
    item.first.distance = km("1000");
    const auto first = first_limits(item, in_service);
    CHECK(first.distance->at == whole_km(1010));
    CHECK(first.distance->window == whole_km(100));
    CHECK_FALSE(first.date);
    CHECK(limits_after(item, in_service, at("2024-04-01", 1090)).distance->at == whole_km(7090));
}

TEST_CASE("Done once and over leaves no limit") {
    PlanItem item;
    item.first.distance = km("1000");
    CHECK_FALSE(limits_after(item, {}, at("2024-04-01", 1090)).any());
}

TEST_CASE("What is not known gives no limit of its kind") {
    const auto item = every(km("6000"), 12);
    CHECK_FALSE(first_limits(item, Moment{{}, whole_km(0), {}}).date);
    CHECK_FALSE(limits_after(item, {}, Moment{day("2024-01-01"), {}, {}}).distance);
    CHECK(limits_after(item, {}, Moment{day("2024-01-01"), {}, {}}).date);
}

TEST_CASE("The owner's window and lead replace ours, kind by kind") {
    auto item = every(km("6000"), 12);
    item.window = Margin{km("1000"), {}, {}};
    item.lead = Margin{{}, 14, {}};
    const auto next = limits_after(item, {}, at("2023-01-01", 0));
    CHECK(next.distance->window == whole_km(1000));
    CHECK(next.date->window_days == Approx(36.5));
    CHECK(next.distance->lead == whole_km(600));
    CHECK(next.date->lead_days == Approx(14));
}

TEST_CASE("Safety, statutory and renewal items have no window, whatever the owner gives") {
    for (const auto kind : {PlanKind::safety, PlanKind::statutory, PlanKind::renewal}) {
        auto item = every(km("6000"), 12);
        item.kind = kind;
        item.window = Margin{km("1000"), 30, {}};
        const auto next = limits_after(item, {}, at("2023-01-01", 0));
        CHECK(next.distance->window == Distance{});
        CHECK(next.date->window_days == 0);
        CHECK(has_no_window(item));
    }
    CHECK_FALSE(has_no_window(every(km("6000"))));
}

TEST_CASE("The lead is the larger of 500 km or 30 days and a tenth of the interval") {
    const auto next = limits_after(every(km("12000"), 3), {}, at("2023-01-01", 0));
    CHECK(next.distance->lead == whole_km(1200));
    CHECK(next.date->lead_days == Approx(30));
    CHECK(limits_after(every(km("2000")), {}, at("2023-01-01", 0)).distance->lead == whole_km(500));
}

TEST_CASE(
    "A grid's next limit lies past the job by more than the window, and less than an interval beyond that") {
    CHECK(rc::check("distance", [] {
        const auto start = *rc::gen::inRange<std::int64_t>(0, 50);
        const auto interval = *rc::gen::inRange<std::int64_t>(10, 30000) * 10;
        const auto job = start + *rc::gen::inRange<std::int64_t>(0, 300000);
        const auto item = on_grid(every(WrittenDistance{Decimal(interval), DistanceUnit::km}));
        const auto next =
            *limits_after(item, Moment{{}, whole_km(start), {}}, Moment{{}, whole_km(job), {}}).distance;
        RC_ASSERT(next.at > whole_km(job) + next.window);
        RC_ASSERT(next.at <= whole_km(job) + next.window + next.interval);
        RC_ASSERT((next.at - whole_km(start)).micrometres() % next.interval.micrometres() == 0);
    }));
    CHECK(rc::check("dates", [] {
        const Date start = plus_days(day("2000-01-01"), *rc::gen::inRange(0, 2000));
        const int months = *rc::gen::inRange(1, 60);
        const Date job = plus_days(start, *rc::gen::inRange(0, 9000));
        const auto next =
            *limits_after(on_grid(every({}, months)), Moment{start, {}, {}}, Moment{job, {}, {}}).date;
        RC_ASSERT(days_between(job, next.at) > next.window_days);
        bool on_the_grid = false;
        for (int k = 1; plus_months(start, k * months) <= next.at; ++k)
            on_the_grid = plus_months(start, k * months) == next.at;
        RC_ASSERT(on_the_grid);
        const Date before = plus_days(next.at, -next.interval_days);
        RC_ASSERT(before <= start || days_between(job, before) <= next.window_days + 1);
    }));
}
