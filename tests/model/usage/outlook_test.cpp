// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/usage/outlook.h"

#include "model/usage/as_of.h"
#include "tests/catch.h"
#include "tests/model/bike_log.h"

#include <cmath>

using namespace sumpbook;
using namespace sumpbook::testing;
using usage::OdometerSeries;
using usage::Outlook;
using usage::OutlookInput;

namespace {

Distance whole_km(std::int64_t km) { return Distance::from_whole_km(km); }

/// About 14 km a day for two years, read every month to 1 Jan 2024.
BikeLog ridden() {
    BikeLog log;
    for (int month = 0; month <= 24; ++month)
        log.reading(iso_text(plus_months(day("2022-01-01"), month)), std::to_string(1000 + month * 425));
    return log;
}
constexpr std::int64_t last_km = 1000 + 24 * 425;

struct Seen {
    explicit Seen(const BikeLog& log, std::string_view today)
        : series(OdometerSeries::of(usage::as_of(log.bike, day(today))))
        , outlook(log.bike, series, day(today)) {}
    OdometerSeries series;
    Outlook outlook;
};

} // namespace

TEST_CASE("A reading of today is no estimate") {
    const Seen seen(ridden(), "2024-01-01");
    const auto today = seen.outlook.today();
    REQUIRE(today);
    CHECK_FALSE(today->estimated);
    CHECK(today->distance == whole_km(last_km));
}

TEST_CASE("Later the distance of today is the median, in whole kilometres") {
    const Seen seen(ridden(), "2024-01-31");
    const auto today = seen.outlook.today();
    REQUIRE(today);
    CHECK(today->estimated);
    CHECK(today->distance.micrometres() % Distance::um_per_km == 0);
    const double ridden_km = (today->distance - whole_km(last_km)).km();
    CHECK(ridden_km == Approx(seen.outlook.forecast().distance_quantile_km(0, 30, 0.5)).margin(0.5));
    CHECK(ridden_km > 250);
    CHECK(ridden_km < 500);
    CHECK(today->last_reading_on == day("2024-01-01"));
    CHECK(today->last_reading == whole_km(last_km));
}

TEST_CASE("The estimate is never below the last reading") {
    BikeLog log;
    log.reading("2024-01-01", "1000.7");
    log.reading("2024-06-01", "1000.7");
    log.add("2024-06-02", Layup{});
    const Seen seen(log, "2024-06-20");
    CHECK(seen.outlook.today()->distance.km() == Approx(1000.7).margin(0.31));
    CHECK(seen.outlook.today()->distance >= *distance_of(km("1000.7")));
}

TEST_CASE("The day of reaching a distance counts from the last reading, rounded up") {
    const Seen seen(ridden(), "2024-01-20");
    const Distance limit = whole_km(last_km + 1400);
    const auto reached = seen.outlook.day_reaching(limit, 0.5);
    const double days = seen.outlook.forecast().days_to_reach(1400, 0.5).value();
    CHECK(reached == plus_days(day("2024-01-01"), static_cast<int>(std::ceil(days))));
    CHECK(seen.outlook.day_reaching(limit, 0.1) < reached);
    CHECK(seen.outlook.day_reaching(limit, 0.9) > reached);
    CHECK_FALSE(seen.outlook.day_reaching(limit, 0.5, plus_days(*reached, -1)));
    CHECK(seen.outlook.day_reaching(limit, 0.5, *reached) == reached);
    CHECK_FALSE(seen.outlook.day_reaching(whole_km(9'000'000), 0.1));
}

TEST_CASE("A distance inside the record was reached on its day, whatever the chance") {
    const Seen seen(ridden(), "2024-01-20");
    for (const double chance : {0.1, 0.5, 0.9})
        CHECK(seen.outlook.day_reaching(whole_km(1425), chance) == day("2022-02-01"));
    CHECK(seen.outlook.day_reaching(whole_km(10), 0.5) == day("2022-01-01"));
    CHECK_FALSE(seen.outlook.day_reaching(whole_km(1425), 0.5, day("2022-01-31")));
}

TEST_CASE("Whether a limit has passed unseen is told only of an old reading") {
    const Distance limit = whole_km(last_km + 400);
    CHECK_FALSE(Seen(ridden(), "2024-01-31").outlook.chance_passed(limit)); // 30 days
    const Seen later(ridden(), "2024-02-01");
    const auto chance = later.outlook.chance_passed(limit);
    REQUIRE(chance);
    CHECK(*chance > 0.3);
    CHECK(*chance < 0.8);
    CHECK_FALSE(later.outlook.chance_passed(whole_km(5000)));
}

TEST_CASE("Without a reading there is no day, but the distance to come has a range") {
    const Seen seen(BikeLog{}, "2024-01-01");
    CHECK_FALSE(seen.outlook.today());
    CHECK_FALSE(seen.outlook.day_reaching(whole_km(100), 0.5));
    CHECK_FALSE(seen.outlook.position(day("2024-06-01"), 0.5));
    const auto year = seen.outlook.in_the_next(365);
    CHECK(year.p50.km() == Approx(2021.477077).margin(1e-5)); // as in stat-usage-model.csv, "none"
    CHECK(year.p10 < year.p50);
    CHECK(year.p50 < year.p90);
    CHECK(seen.outlook.words(DistanceUnit::km).find("never read") != std::string::npos);
}

TEST_CASE("One reading, or a record under a week, rests on the guess") {
    BikeLog log;
    log.reading("2024-04-09", "1400");
    const Seen one(log, "2024-04-09");
    CHECK_FALSE(one.outlook.learnt());
    CHECK(one.outlook.day_reaching(whole_km(2400), 0.5));
    CHECK(one.outlook.words(DistanceUnit::km).find("2 500 km a year, an assumption") != std::string::npos);
    log.bike.details.value.expected_distance_a_year = km("6000");
    const Seen guessed(log, "2024-04-09");
    CHECK(guessed.outlook.in_the_next(90).p50 > one.outlook.in_the_next(90).p50);
    CHECK(guessed.outlook.day_reaching(whole_km(2400), 0.5) < one.outlook.day_reaching(whole_km(2400), 0.5));
    CHECK(guessed.outlook.words(DistanceUnit::km).find("your guess of 6 000 km") != std::string::npos);
    log.reading("2024-04-16", "1600");
    CHECK(Seen(log, "2024-04-16").outlook.learnt());
}

TEST_CASE("More is ridden where more was ridden, and the words say how much") {
    const Seen seen(ridden(), "2024-01-01");
    const auto year = seen.outlook.in_the_next(365);
    CHECK(year.p50.km() == Approx(5100).epsilon(0.1));
    CHECK(seen.outlook.in_the_next(90).p50 < year.p50);
    CHECK(seen.outlook.words(DistanceUnit::km).starts_with("from your riding since 2022, about "));
    CHECK(seen.outlook.words(DistanceUnit::mi).find(" mi in the next 12 months") != std::string::npos);
}

TEST_CASE("Leaving an input out moves the day the way it must") {
    auto log = ridden();
    log.add("2024-02-01", Layup{day("2024-04-30"), true});
    const Seen seen(log, "2024-01-21");
    const Distance limit = whole_km(last_km + 1000);
    const auto with = seen.outlook.day_reaching(limit, 0.5);
    const auto without = [&](OutlookInput input) {
        return seen.outlook.without(input).day_reaching(limit, 0.5);
    };
    CHECK(without(OutlookInput::layups) < with);
    CHECK(without(OutlookInput::riding) > with); // 2 500 km a year is less
    CHECK(without(OutlookInput::reading_age) > with);
    CHECK(without(OutlookInput::season).has_value());
}

TEST_CASE("The shares of a year's distance sum to 1") {
    const Seen seen(ridden(), "2024-01-01");
    double sum = 0;
    for (const double share : seen.outlook.share_of_year())
        sum += share;
    CHECK(sum == Approx(1));
}

TEST_CASE("As of a day the later entries are not there") {
    const auto log = ridden();
    CHECK(usage::as_of(log.bike, day("2022-01-31")).log.size() == 1);
    CHECK(usage::as_of(log.bike, day("2022-02-01")).log.size() == 2);
    const Seen then(log, "2022-03-15");
    CHECK(then.outlook.today()->last_reading == whole_km(1850));
}
