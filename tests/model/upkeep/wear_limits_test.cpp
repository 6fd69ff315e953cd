// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/upkeep/wear_limits.h"

#include "tests/catch.h"
#include "tests/model/bike_log.h"

using namespace sumpbook;
using namespace sumpbook::testing;
using namespace sumpbook::upkeep;

namespace {

/// A measurement; without a limit of the owner's where `limit` is empty.
void measure(BikeLog& log, std::string_view date, std::string_view odometer, const std::string& quantity,
             std::string_view value, std::string_view limit = {}, const std::string& unit = "mm",
             const std::string& at = "front") {
    Measure measure{quantity, number(value), unit, at, {}};
    if (!limit.empty()) measure.limit = number(limit);
    log.add(date, measure, odometer);
}

std::vector<DueItem> items_on(const BikeLog& log, std::string_view today) {
    return wear_limits(BikeToday(log.bike, day(today)));
}

} // namespace

TEST_CASE("Pads measured twice are due where the line meets the owner's limit") {
    BikeLog log;
    measure(log, "2024-01-01", "1000", "pad", "5.0", "1.0");
    measure(log, "2024-07-01", "5000", "pad", "3.0", "1.0");
    const auto items = items_on(log, "2024-07-01");
    REQUIRE(items.size() == 1);
    CHECK(items[0].slug == "wear-pad-front");
    CHECK(items[0].label == "Brake pad, front, down to 1.0 mm");
    CHECK(items[0].limits.distance->at == Distance::from_whole_km(9000));
    CHECK(items[0].limits.distance->window == Distance{});
    CHECK(items[0].state == DueState::later);
    CHECK(items[0].set_right_by == "front-pads");
    CHECK(items[0].source->find("straight line through 2 measurements") == 0);
    CHECK(items[0].source->find("the limit is yours") != std::string::npos);
}

TEST_CASE("Without a limit of the owner's the published one holds, in its own unit only") {
    BikeLog log;
    measure(log, "2024-01-01", "1000", "tread", "6.6", {}, "mm", "rear");
    measure(log, "2024-07-01", "5000", "tread", "4.6", {}, "mm", "rear");
    measure(log, "2024-01-01", "1000", "pad", "0.20", {}, "in");
    measure(log, "2024-07-01", "5000", "pad", "0.10", {}, "in");
    const auto items = items_on(log, "2024-07-01");
    REQUIRE(items.size() == 1);
    CHECK(items[0].slug == "wear-tread-rear");
    CHECK(items[0].limits.distance->at == Distance::from_whole_km(11000)); // 1.6 mm
    CHECK(items[0].source->find("StVZO") != std::string::npos);
}

TEST_CASE("At its limit a part is due, ridden on it is overdue") {
    BikeLog log;
    measure(log, "2024-01-01", "1000", "pad", "1.0", "1.0");
    CHECK(items_on(log, "2024-01-01").at(0).state == DueState::due);
    log.reading("2024-02-01", "1001");
    CHECK(items_on(log, "2024-02-01").at(0).state == DueState::overdue);
}

TEST_CASE("A new part starts anew, in its own place") {
    BikeLog log;
    measure(log, "2024-01-01", "1000", "tread", "1.5", "1.6", "mm", "front");
    measure(log, "2024-01-01", "1000", "tread", "1.5", "1.6", "mm", "rear");
    Fit tyre;
    tyre.slot = "rear-tyre";
    log.add("2024-02-01", tyre, "1100");
    const auto items = items_on(log, "2024-02-01");
    REQUIRE(items.size() == 1);
    CHECK(items[0].slug == "wear-tread-front");
}

TEST_CASE("A chain stretches") {
    BikeLog log;
    measure(log, "2024-01-01", "1000", "chain", "0.5", {}, "%", "");
    measure(log, "2024-07-01", "6000", "chain", "1.0", {}, "%", "");
    const auto items = items_on(log, "2024-07-01");
    REQUIRE(items.size() == 1);
    CHECK(items[0].limits.distance->at == Distance::from_whole_km(16000)); // 2 %
}

TEST_CASE("A valve clearance found at its limit is set right by the job of that day") {
    BikeLog log;
    measure(log, "2024-01-01", "12000", "valve-clearance", "0.10", "0.10", "mm", "exhaust 1");
    CHECK(items_on(log, "2024-01-01").size() == 1);
    log.work("2024-01-01", "12000", {"valve-clearance"});
    CHECK(items_on(log, "2024-01-01").empty());
}

TEST_CASE("Clearances close or open towards their limit, and have no published one") {
    BikeLog log;
    measure(log, "2023-01-01", "12000", "valve-clearance", "0.20", "0.10", "mm", "exhaust 1");
    measure(log, "2024-01-01", "24000", "valve-clearance", "0.15", "0.10", "mm", "exhaust 1");
    measure(log, "2023-01-01", "12000", "valve-clearance", "0.10", "0.20", "mm", "inlet 1");
    measure(log, "2024-01-01", "24000", "valve-clearance", "0.12", "0.20", "mm", "inlet 1");
    measure(log, "2023-01-01", "12000", "valve-clearance", "0.10", {}, "mm", "inlet 2");
    measure(log, "2024-01-01", "24000", "valve-clearance", "0.12", {}, "mm", "inlet 2");
    const auto items = items_on(log, "2024-01-01");
    REQUIRE(items.size() == 2);
    CHECK(items[0].limits.distance->at == Distance::from_whole_km(36000));
    CHECK(items[1].limits.distance->at == Distance::from_whole_km(72000));
}

TEST_CASE("Found worn out after the last reading a part is due, without an odometer beside it") {
    BikeLog log;
    measure(log, "2024-01-01", "1000", "pad", "5.0");
    measure(log, "2024-07-01", "5000", "pad", "4.0");
    measure(log, "2024-07-11", {}, "pad", "0.5");
    const auto same_day = items_on(log, "2024-07-11").at(0);
    CHECK(same_day.limits.distance->at == same_day.now.distance); // the estimate of that day
    CHECK(same_day.limits.distance->at > Distance::from_whole_km(5000));
    CHECK(same_day.state == DueState::due);
    CHECK(same_day.source->find("0.5 mm measured on") == 0);
    CHECK(items_on(log, "2024-07-21").at(0).state == DueState::overdue);
}

TEST_CASE("Measured after the last reading, not yet worn out, the estimate of that day counts") {
    BikeLog log;
    log.reading("2024-01-01", "0");
    measure(log, "2024-04-10", "1000", "pad", "5.0", "1.0");
    measure(log, "2024-07-19", {}, "pad", "3.0", "1.0"); // half way from the last reading to today: 2 mm left
    const auto item = items_on(log, "2024-10-27").at(0);
    REQUIRE(*item.now.distance > Distance::from_whole_km(1000));
    CHECK((item.limits.distance->at - *item.now.distance).km() ==
          Approx(0).margin(1)); // worn out in whole km
}

TEST_CASE("Worn out without any reading a part is due on the day it was found") {
    BikeLog log;
    measure(log, "2024-01-01", {}, "pad", "3.0");
    CHECK(items_on(log, "2024-01-01").empty());
    measure(log, "2024-07-01", {}, "pad", "1.5");
    const auto item = items_on(log, "2024-07-01").at(0);
    CHECK_FALSE(item.limits.distance.has_value());
    CHECK(item.limits.date->at == day("2024-07-01"));
    CHECK(item.state == DueState::due);
    CHECK(items_on(log, "2024-07-02").at(0).state == DueState::overdue);
}

TEST_CASE("Worn out before the first reading a part is due, and no line goes through that day") {
    BikeLog log;
    measure(log, "2024-01-01", {}, "pad", "1.0");
    log.reading("2024-02-01", "1000");
    CHECK(items_on(log, "2024-02-01").at(0).state == DueState::overdue);
    measure(log, "2024-02-02", "1010", "pad", "6.0"); // new pads
    CHECK(items_on(log, "2024-02-02").empty());
}
