// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/review/record_gaps.h"

#include "tests/catch.h"
#include "tests/model/bike_log.h"

using namespace sumpbook;
using namespace sumpbook::testing;
using review::record_gaps;

TEST_CASE("Half a year without an entry is a gap, with what was ridden in it", "[review]") {
    BikeLog log;
    log.reading("2023-01-01", "1000");
    log.reading("2023-06-29", "2000"); // 179 days
    log.reading("2023-12-26", "5000"); // 180 days
    const auto gaps = record_gaps(log.bike);
    REQUIRE(gaps.size() == 1);
    CHECK(gaps[0].from == day("2023-06-29"));
    CHECK(gaps[0].to == day("2023-12-26"));
    CHECK(gaps[0].ridden == Distance::from_whole_km(3000));
    CHECK_FALSE(gaps[0].laid_up);
}

TEST_CASE("An entry without a reading ends a gap; what was ridden comes from the readings around it",
          "[review]") {
    BikeLog log;
    log.reading("2022-01-01", "1000");
    log.work("2022-12-01", "", {});
    log.reading("2022-12-20", "4000");
    const auto gaps = record_gaps(log.bike);
    REQUIRE(gaps.size() == 1);
    CHECK(gaps[0].to == day("2022-12-01"));
    CHECK(gaps[0].ridden == Distance::from_whole_km(3000));
}

TEST_CASE("Without readings on both sides nobody knows what was ridden", "[review]") {
    BikeLog log;
    log.work("2022-01-01", "", {});
    log.reading("2022-12-20", "4000");
    REQUIRE(record_gaps(log.bike).size() == 1);
    CHECK_FALSE(record_gaps(log.bike)[0].ridden);
}

TEST_CASE("A lay-up that reaches to the end explains a gap, a planned one does not", "[review]") {
    BikeLog log;
    log.reading("2022-10-01", "1000");
    log.add("2022-10-15", Layup{day("2023-05-01"), false});
    log.reading("2023-05-10", "1000");
    REQUIRE(record_gaps(log.bike).size() == 1);
    CHECK(record_gaps(log.bike)[0].laid_up);
    CHECK(record_gaps(log.bike)[0].ridden == Distance{});
    std::get<Layup>(log.bike.log[1].value.body).planned = true;
    CHECK_FALSE(record_gaps(log.bike)[0].laid_up);
    std::get<Layup>(log.bike.log[1].value.body) = Layup{day("2023-01-01"), false};
    CHECK_FALSE(record_gaps(log.bike)[0].laid_up);
}

TEST_CASE("A bike with one entry or none has no gap", "[review]") {
    BikeLog log;
    CHECK(record_gaps(log.bike).empty());
    log.reading("2022-10-01", "1000");
    CHECK(record_gaps(log.bike).empty());
}
