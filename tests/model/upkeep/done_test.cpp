// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/upkeep/done.h"

#include "tests/catch.h"
#include "tests/model/bike_log.h"

using namespace sumpbook;
using namespace sumpbook::testing;
using namespace sumpbook::upkeep;
using usage::EngineHours;
using usage::OdometerSeries;

namespace {

std::vector<Done> times(const BikeLog& log, std::string_view slug) {
    const auto odometer = OdometerSeries::of(log.bike);
    const auto* item = find_plan_item(log.bike, slug);
    REQUIRE(item != nullptr);
    return times_done(item->value, log.bike, odometer, EngineHours::of(log.bike, odometer));
}

} // namespace

TEST_CASE("A job satisfies what it names and what that includes, to the end") {
    BikeLog log;
    log.plan("big-service").includes = {"engine-oil"};
    log.plan("engine-oil").includes = {"oil-filter"};
    log.plan("oil-filter").includes = {"big-service"}; // a circle comes to an end
    log.plan("air-filter");
    log.work("2024-01-01", "1000", {"big-service"});
    CHECK(times(log, "big-service").size() == 1);
    CHECK(times(log, "oil-filter").size() == 1);
    CHECK(times(log, "air-filter").empty());
}

TEST_CASE("An oil change satisfies engine oil by itself, the filter when it was changed") {
    BikeLog log;
    log.plan("engine-oil");
    log.plan("oil-filter");
    log.plan("valve-clearance").compartment = "engine";
    log.add("2023-01-01", OilChange{}, "1000");
    OilChange with_filter;
    with_filter.filter_changed = true;
    log.add("2024-01-01", with_filter, "7000");
    CHECK(times(log, "engine-oil").size() == 2);
    CHECK(times(log, "oil-filter").size() == 1);
    CHECK(times(log, "valve-clearance").empty());
}

TEST_CASE("An oil change of another compartment satisfies the item of that compartment") {
    BikeLog log;
    log.plan("engine-oil");
    log.plan("final-drive-oil");
    log.plan("primary-oil").compartment = "primary";
    OilChange change;
    change.compartment = "final-drive";
    log.add("2023-01-01", change, "1000");
    change.compartment = "primary";
    log.add("2023-01-02", change, "1010");
    CHECK(times(log, "engine-oil").empty());
    CHECK(times(log, "final-drive-oil").size() == 1);
    CHECK(times(log, "primary-oil").size() == 1);
}

TEST_CASE("A component fitted to a slot satisfies the item of that slot") {
    BikeLog log;
    log.plan("battery");
    log.plan("rear-rubber").slot = "rear-tyre";
    Fit fit;
    fit.slot = "battery";
    log.add("2023-01-01", fit, "1000");
    fit.slot = "rear-tyre";
    log.add("2023-01-02", fit, "1010");
    CHECK(times(log, "battery").size() == 1);
    CHECK(times(log, "rear-rubber").size() == 1);
}

TEST_CASE("A job without an odometer has the distance of its day, and says so") {
    BikeLog log;
    log.plan("engine-oil");
    log.reading("2024-01-01", "1000");
    log.work("2024-01-06", "", {"engine-oil"});
    log.reading("2024-01-11", "2000");
    const auto done = times(log, "engine-oil");
    REQUIRE(done.size() == 1);
    CHECK(done[0].at.distance == Distance::from_whole_km(1500));
    CHECK(done[0].distance_estimated);
    CHECK(*done[0].at.engine_hours == Approx(30));
}

TEST_CASE("The baseline stands among the jobs by its date, on the dial of its day") {
    BikeLog log;
    log.plan("engine-oil");
    Reading change;
    change.clock_change = ClockChange{km("45000"), km("0")};
    log.add("2020-01-01", change);
    log.work("2021-01-01", "5000", {"engine-oil"});
    Versioned<Baseline> baseline;
    baseline.value = {"engine-oil", day("2019-01-01"), km("40000"), {}, Evidence::told};
    log.bike.baselines.push_back(baseline);
    const auto done = times(log, "engine-oil");
    REQUIRE(done.size() == 2);
    CHECK(done[0].baseline);
    CHECK(done[0].evidence == Evidence::told);
    CHECK(done[0].at.distance == Distance::from_whole_km(40000));
    CHECK(done[1].at.distance == Distance::from_whole_km(50000));
}

TEST_CASE("Going into service is at 0 km unless the bike says otherwise") {
    BikeLog log;
    const auto odometer = OdometerSeries::of(log.bike);
    const auto hours = EngineHours::of(log.bike, odometer);
    CHECK(in_service(log.bike, odometer, hours).distance == Distance{});
    CHECK_FALSE(in_service(log.bike, odometer, hours).date);
    log.bike.details.value.in_service_date = day("2019-04-01");
    log.bike.details.value.in_service_odometer = km("12");
    CHECK(in_service(log.bike, odometer, hours).distance == Distance::from_whole_km(12));
    CHECK(in_service(log.bike, odometer, hours).date == day("2019-04-01"));
}

TEST_CASE("Entries of one day are one visit, told by the one with a reading") {
    BikeLog log;
    log.plan("engine-oil");
    log.reading("2023-12-01", "900");
    log.work("2024-01-01", "", {"engine-oil"});
    log.add("2024-01-01", OilChange{}, "1000");
    log.add("2024-01-08", OilChange{}, "1050");
    const auto done = times(log, "engine-oil");
    REQUIRE(done.size() == 2);
    CHECK(done[0].entry_id == "k7-3");
    CHECK(done[0].at.distance == Distance::from_whole_km(1000));
    CHECK(done[1].entry_id == "k7-4");
}
