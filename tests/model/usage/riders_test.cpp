// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/usage/riders.h"

#include "tests/catch.h"
#include "tests/model/bike_log.h"

#include <numeric>

using namespace sumpbook;
using namespace sumpbook::testing;
using usage::DayEnd;
using usage::steps_of;

namespace {

DayEnd at(std::string_view date, std::int64_t km) { return {day(date), Distance::from_whole_km(km)}; }

} // namespace

TEST_CASE("A record under a week has no steps, one of a week is one step") {
    CHECK(steps_of({}).empty());
    CHECK(steps_of({at("2024-01-01", 0)}).empty());
    CHECK(steps_of({at("2024-01-01", 0), at("2024-01-07", 100)}).empty());
    const auto steps = steps_of({at("2024-01-01", 0), at("2024-01-03", 40), at("2024-01-08", 100)});
    REQUIRE(steps.size() == 1);
    CHECK(steps[0].days() == 7);
    CHECK(steps[0].distance_km == Approx(100));
}

TEST_CASE("A step ends at the first reading a month on, and a short tail joins the last") {
    const auto steps = steps_of({at("2024-01-01", 0), at("2024-01-20", 50), at("2024-01-28", 70),
                                 at("2024-01-29", 80), at("2024-03-10", 500), at("2024-03-20", 520)});
    REQUIRE(steps.size() == 2);
    CHECK(steps[0].last == day("2024-01-29")); // 28 days; the reading of the 27th is one too few
    CHECK(steps[0].distance_km == Approx(80));
    CHECK(steps[1].after == day("2024-01-29"));
    CHECK(steps[1].last == day("2024-03-20"));
    CHECK(steps[1].distance_km == Approx(440));
}

TEST_CASE("A long record has at most 120 steps, and they cover all of it") {
    std::vector<DayEnd> ends;
    for (int i = 0; i < 20 * 52; ++i)
        ends.push_back({plus_days(day("2004-01-01"), 7 * i), Distance::from_whole_km(50 * i)});
    const auto steps = steps_of(ends);
    CHECK(steps.size() <= 120);
    CHECK(steps.front().after == ends.front().date);
    CHECK(steps.back().last == ends.back().date);
    double km = 0;
    for (std::size_t i = 0; i < steps.size(); ++i) {
        km += steps[i].distance_km;
        CHECK(steps[i].days() >= 28);
        if (i > 0) CHECK(steps[i].after == steps[i - 1].last);
    }
    CHECK(km == Approx(50.0 * (20 * 52 - 1)));
}

TEST_CASE("Weights sum to 1, and a season in the record is learnt") {
    std::vector<DayEnd> ends{at("2021-01-01", 0)};
    double km = 0;
    for (int month = 1; month <= 36; ++month) {
        km += month % 12 >= 5 && month % 12 <= 8 ? 900 : 30; // April to August
        ends.push_back({plus_months(day("2021-01-01"), month), Distance::from_km(km)});
    }
    const usage::RidingDays riding(Bike{}, ends.front().date, ends.back().date);
    const auto riders = usage::learn_riders(steps_of(ends), riding, {});
    double weight = 0;
    double summer = 0;
    double winter = 0;
    for (const auto& rider : riders.kept) {
        weight += rider.weight;
        summer += rider.weight * riders.pace[rider.clock][5];
        winter += rider.weight * riders.pace[rider.clock][11];
        CHECK(rider.belief.a > 1);
        CHECK(rider.belief.b_km > 0);
    }
    CHECK(weight == Approx(1));
    CHECK(summer > 5 * winter);
    for (const auto& pace : riders.pace) { // a year is as long for every clock
        double year = 0;
        for (std::size_t m = 0; m < 12; ++m)
            year += pace[m] * usage::days_of_month[m];
        CHECK(year == Approx(usage::days_of_year));
    }
}

TEST_CASE("Without a record the owner's guess sets the level") {
    const usage::RidingDays riding(Bike{}, day("2024-01-01"), day("2024-01-01"));
    const auto common = usage::learn_riders({}, riding, {});
    const auto guessed = usage::learn_riders({}, riding, 5000);
    REQUIRE(common.kept.size() == 600);
    CHECK(guessed.kept[0].belief.b_km == Approx(2 * common.kept[0].belief.b_km));
    CHECK(guessed.kept[0].belief.a == 2);
}
