// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/usage/engine_hours.h"

#include "tests/catch.h"
#include "tests/model/bike_log.h"

using namespace sumpbook;
using namespace sumpbook::testing;
using usage::EngineHours;
using usage::OdometerSeries;

namespace {

Distance whole_km(std::int64_t km) { return Distance::from_whole_km(km); }

void read_both(BikeLog& log, std::string_view date, std::string_view odometer, std::string_view hours) {
    log.reading(date, odometer).value.hours = number(hours);
}

} // namespace

TEST_CASE("Without a meter hours are distance over 50 km/h, or over the owner's speed") {
    BikeLog log;
    log.reading("2024-01-01", "1000");
    auto hours = EngineHours::of(log.bike, OdometerSeries::of(log.bike));
    CHECK_FALSE(hours.metered());
    CHECK(hours.hours_at(whole_km(1000)) == Approx(20));
    CHECK(hours.distance_at(20) == whole_km(1000));
    CHECK(hours.words() == "by 50 km/h, an assumption");

    log.bike.details.value.average_speed_km_h = number("40");
    hours = EngineHours::of(log.bike, OdometerSeries::of(log.bike));
    CHECK(hours.hours_at(whole_km(1000)) == Approx(25));
    CHECK(hours.words() == "by your average of 40.0 km/h");
}

TEST_CASE("With a meter its own hours per km carry on") {
    BikeLog log;
    read_both(log, "2024-01-01", "1000", "100");
    read_both(log, "2024-06-01", "1300", "110");
    const auto hours = EngineHours::of(log.bike, OdometerSeries::of(log.bike));
    CHECK(hours.metered());
    CHECK(hours.hours_at(whole_km(1300)) == Approx(110));
    CHECK(hours.hours_at(whole_km(1600)) == Approx(120));
    CHECK(hours.hours_at(whole_km(1090)) == Approx(103));
    CHECK(hours.distance_at(120) == whole_km(1600));
    CHECK(hours.hours_of_entry("k7-2") == 110.0);
}

TEST_CASE("A meter reading that falls is left out") {
    BikeLog log;
    read_both(log, "2024-01-01", "1000", "100");
    read_both(log, "2024-03-01", "1100", "10.2");
    read_both(log, "2024-06-01", "1300", "110");
    const auto hours = EngineHours::of(log.bike, OdometerSeries::of(log.bike));
    CHECK_FALSE(hours.hours_of_entry("k7-2"));
    CHECK(hours.hours_at(whole_km(1600)) == Approx(120));
}

TEST_CASE("One meter reading carries on at the average speed") {
    BikeLog log;
    read_both(log, "2024-01-01", "1000", "100");
    const auto hours = EngineHours::of(log.bike, OdometerSeries::of(log.bike));
    CHECK(hours.hours_at(whole_km(1500)) == Approx(110));
}
