// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/usage/oil_fills.h"

#include "tests/catch.h"
#include "tests/model/bike_log.h"

using namespace sumpbook;
using namespace sumpbook::testing;
using usage::OdometerSeries;
using usage::oil_fills;

namespace {

TopUp topped(std::string_view volume, std::string_view level_after = {}) {
    TopUp top_up;
    top_up.volume = litres(volume);
    if (!level_after.empty()) top_up.level_after = number(level_after);
    return top_up;
}

std::vector<usage::OilFill> fills_of(const BikeLog& log) {
    return oil_fills(log.bike, OdometerSeries::of(log.bike));
}

} // namespace

TEST_CASE("A fill runs from its refill to the next") {
    BikeLog log;
    log.add("2023-01-01", OilChange{}, "5000");
    log.add("2023-06-01", topped("0.3"), "7000");
    log.add("2024-01-01", OilChange{}, "10000");
    const auto fills = fills_of(log);
    REQUIRE(fills.size() == 2);
    CHECK(fills[0].until == day("2024-01-01"));
    CHECK(fills[0].events.size() == 2);
    CHECK(fills[0].events[0].litres_below_mark == 0.0);
    CHECK_FALSE(fills[0].events[1].litres_below_mark); // nobody said how high it stood
    CHECK_FALSE(fills[1].until);
}

TEST_CASE("Levels are litres below the upper mark") {
    BikeLog log;
    log.bike.details.value.between_level_marks = litres("0.8");
    OilChange change;
    change.level_after = number("0.75");
    log.add("2023-01-01", change, "5000");
    log.add("2023-06-01", topped("0.3", "1"), "7000");
    const auto fills = fills_of(log);
    CHECK(*fills[0].events[0].litres_below_mark == Approx(0.2));
    CHECK(fills[0].events[1].litres_below_mark == 0.0);
}

TEST_CASE("A level before a top-up is an event of its own") {
    BikeLog log;
    log.bike.details.value.between_level_marks = litres("1");
    log.add("2023-01-01", OilChange{}, "5000");
    auto top_up = topped("0.3");
    top_up.level_before = number("0.5");
    log.add("2023-06-01", top_up, "7000");
    const auto fills = fills_of(log);
    REQUIRE(fills[0].events.size() == 3);
    CHECK(fills[0].events[1].litres_below_mark == 0.5);
    CHECK(fills[0].events[1].added == Volume{});
    CHECK(fills[0].events[2].added == Volume::from_litres(0.3));
}

TEST_CASE("A level between the marks says nothing in litres where the bike does not state them") {
    BikeLog log;
    OilChange change;
    change.level_after = number("0.75");
    log.add("2023-01-01", change, "5000");
    CHECK_FALSE(fills_of(log)[0].events[0].litres_below_mark);
}

TEST_CASE("A record that begins with a top-up begins inside a fill") {
    BikeLog log;
    log.add("2023-01-01", topped("0.3", "1"), "5000");
    const auto fills = fills_of(log);
    REQUIRE(fills.size() == 1);
    CHECK_FALSE(fills[0].oil_change_id);
}

TEST_CASE("Only the asked compartment counts") {
    BikeLog log;
    OilChange gearbox;
    gearbox.compartment = "gearbox";
    log.add("2023-01-01", gearbox, "5000");
    CHECK(fills_of(log).empty());
    CHECK(oil_fills(log.bike, OdometerSeries::of(log.bike), "gearbox").size() == 1);
}

TEST_CASE("Run-in ends at the first service, without one at 1 000 km") {
    BikeLog log;
    log.add("2023-01-01", topped("0.1", "1"), "300");
    log.add("2023-02-01", OilChange{}, "1090");
    CHECK(fills_of(log)[0].run_in);
    CHECK_FALSE(fills_of(log)[1].run_in);

    log.work("2023-06-01", "1500", {"first-service"});
    CHECK(fills_of(log)[1].run_in);
    log.bike.log.back().value.date = day("2023-02-01"); // the same visit as the refill
    CHECK_FALSE(fills_of(log)[1].run_in);
}
