// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/usage/outlook.h"

#include "model/usage/as_of.h"
#include "tests/catch.h"
#include "tests/model/bike_log.h"

using namespace sumpbook;
using namespace sumpbook::testing;
using usage::OdometerSeries;
using usage::PlainOutlook;

namespace {

BikeLog ridden() {
    BikeLog log;
    log.reading("2023-12-31", "0");
    log.reading("2024-04-09", "1400"); // 100 days, 14 km a day
    return log;
}

} // namespace

TEST_CASE("A reading of today is no estimate") {
    const auto log = ridden();
    const auto series = OdometerSeries::of(log.bike);
    const auto today = PlainOutlook(series, day("2024-04-09")).today();
    REQUIRE(today);
    CHECK_FALSE(today->estimated);
    CHECK(today->distance == Distance::from_whole_km(1400));
}

TEST_CASE("Later the distance of today is the average carried on, in whole kilometres") {
    const auto log = ridden();
    const auto series = OdometerSeries::of(log.bike);
    const auto today = PlainOutlook(series, day("2024-04-12")).today();
    REQUIRE(today);
    CHECK(today->estimated);
    CHECK(today->distance == Distance::from_whole_km(1442));
    CHECK(today->last_reading_on == day("2024-04-09"));
}

TEST_CASE("The day of reaching a distance counts from the last reading, rounded up") {
    const auto log = ridden();
    const auto series = OdometerSeries::of(log.bike);
    const PlainOutlook outlook(series, day("2024-04-12"));
    CHECK(outlook.day_reaching(Distance::from_whole_km(1540), 0.5) == day("2024-04-19"));
    CHECK(outlook.day_reaching(Distance::from_whole_km(1541), 0.5) == day("2024-04-20"));
    CHECK(outlook.day_reaching(Distance::from_whole_km(700), 0.5) == day("2024-02-19"));
    CHECK_FALSE(outlook.day_reaching(Distance::from_whole_km(1'000'000), 0.5));
    CHECK_FALSE(outlook.has_range());
}

TEST_CASE("The words say what the dates rest on") {
    const auto log = ridden();
    const auto series = OdometerSeries::of(log.bike);
    const PlainOutlook outlook(series, day("2024-04-12"));
    CHECK(outlook.words(DistanceUnit::km) ==
          "from your plain average of 14 km a day since 2023; no range yet");
    CHECK(outlook.words(DistanceUnit::mi) ==
          "from your plain average of 8.7 mi a day since 2023; no range yet");
}

TEST_CASE("Without a rate nothing is foretold") {
    BikeLog log;
    log.reading("2024-04-09", "1400");
    const auto series = OdometerSeries::of(log.bike);
    const PlainOutlook outlook(series, day("2024-04-12"));
    CHECK(outlook.today()->distance == Distance::from_whole_km(1400));
    CHECK(outlook.today()->estimated);
    CHECK_FALSE(outlook.day_reaching(Distance::from_whole_km(1500), 0.5));
    CHECK(outlook.words(DistanceUnit::km).find("less than a week") != std::string::npos);
}

TEST_CASE("As of a day the later entries are not there") {
    const auto log = ridden();
    const auto then = usage::as_of(log.bike, day("2024-04-08"));
    CHECK(then.log.size() == 1);
    CHECK(usage::as_of(log.bike, day("2024-04-09")).log.size() == 2);
}
