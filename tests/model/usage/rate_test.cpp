// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/usage/rate.h"

#include "tests/catch.h"
#include "tests/model/bike_log.h"

using namespace sumpbook;
using namespace sumpbook::testing;

TEST_CASE("The plain rate is the distance of the accepted record over its days") {
    BikeLog log;
    log.reading("2024-01-01", "1000");
    log.reading("2024-02-01", "90000"); // rejected
    log.reading("2024-03-01", "1500");
    log.reading("2024-04-10", "2400");
    const auto rate = usage::plain_rate(usage::OdometerSeries::of(log.bike));
    REQUIRE(rate);
    CHECK(rate->km_a_day == Approx(14.0));
    CHECK(rate->since == day("2024-01-01"));
    CHECK(rate->until == day("2024-04-10"));
}

TEST_CASE("A record under a week gives no rate") {
    BikeLog log;
    log.reading("2024-01-01", "1000");
    CHECK_FALSE(usage::plain_rate(usage::OdometerSeries::of(log.bike)));
    log.reading("2024-01-07", "1100");
    CHECK_FALSE(usage::plain_rate(usage::OdometerSeries::of(log.bike)));
    log.reading("2024-01-08", "1100");
    CHECK(usage::plain_rate(usage::OdometerSeries::of(log.bike)));
}
