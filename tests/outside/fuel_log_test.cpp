// SPDX-License-Identifier: GPL-3.0-or-later
// Consumption from full fill to full fill; the log and its figures stand in the table.
#include "model/usage/fuel.h"

#include "tests/catch.h"
#include "tests/model/bike_log.h"
#include "tests/outside/check_table.h"
#include "tests/outside/numbers.h"

using namespace sumpbook;
using namespace sumpbook::outside;
using sumpbook::testing::BikeLog;
using usage::FuelUse;

namespace {

const CheckRow& row_that_starts(const std::string& text) {
    for (const CheckRow& row : check_table("std-fuel-examples.csv")) {
        if (row["input"].starts_with(text)) return row;
    }
    throw std::logic_error("no such row: " + text);
}

void fill(BikeLog& log, const std::string& odometer, std::string_view volume, bool full,
          bool missed = false) {
    Fuel fuel;
    fuel.volume = sumpbook::testing::litres(volume);
    fuel.full = full;
    fuel.missed_before = missed;
    log.add("2024-05-01", fuel, odometer);
}

/// "odo 10000 full; 10180 partial 8.2 L; 10310 full 7.1 L", then "... then 10500 full 9.5 L".
BikeLog published_log(bool whole) {
    BikeLog log;
    fill(log, "10000", "11.3", true); // any amount: the first full fill does not count
    fill(log, "10180", "8.2", false);
    fill(log, "10310", "7.1", true);
    if (whole) fill(log, "10500", "9.5", true);
    return log;
}

FuelUse use_of(const BikeLog& log) { return usage::fuel_use(log.bike, usage::OdometerSeries::of(log.bike)); }

std::string six_digits(double figure) { return decimal_from_double(figure, 6).text(); }

} // namespace

TEST_CASE("A part fill is carried into the next full fill", "[outside][fuel]") {
    const CheckRow& row = row_that_starts("odo 10000 full");
    TESTING_ROW(row);
    const auto use = use_of(published_log(false));
    REQUIRE(use.spans.size() == 1);
    CHECK(use.spans[0].distance == Distance::from_whole_km(310));
    CHECK(row["expected"].starts_with(six_digits(use.spans[0].consumption->litres_per_100km) + " "));
}

TEST_CASE("The next span stands by itself", "[outside][fuel]") {
    const CheckRow& row = row_that_starts("... then 10500");
    TESTING_ROW(row);
    const auto use = use_of(published_log(true));
    REQUIRE(use.spans.size() == 2);
    CHECK(six_digits(use.spans[1].consumption->litres_per_100km) == row["expected"]);
}

TEST_CASE("Overall is litres over distance, not the mean of spans", "[outside][fuel]") {
    const CheckRow& row = row_that_starts("whole log above");
    TESTING_ROW(row);
    const auto use = use_of(published_log(true));
    const auto numbers = numbers_in(row["expected"]); // 4.960000 = 24.8/500*100; ... 4.967742
    CHECK(use.overall->litres_per_100km == Approx(numbers[0]).margin(5e-7));
    const double mean_of_spans =
        (use.spans[0].consumption->litres_per_100km + use.spans[1].consumption->litres_per_100km) / 2;
    CHECK(mean_of_spans == Approx(numbers.back()).margin(5e-7));
    CHECK(use.overall->litres_per_100km < mean_of_spans);
}

TEST_CASE("The first full fill gives no figure and its litres do not count", "[outside][fuel]") {
    const CheckRow& row = row_that_starts("first full fill");
    TESTING_ROW(row);
    BikeLog log;
    fill(log, "10000", "11.3", true);
    CHECK_FALSE(use_of(log).overall);
    CHECK(use_of(published_log(true)).sound_fuel == Volume::from_litres(24.8));
}

TEST_CASE("A span that holds a missed fill gives no figure; the next starts at its end", "[outside][fuel]") {
    const CheckRow& row = row_that_starts("missed fill flagged"); // from memory: common practice
    TESTING_ROW(row);
    BikeLog log;
    fill(log, "10000", "11.3", true);
    fill(log, "10600", "9", true, true);
    fill(log, "10790", "9.5", true);
    const auto use = use_of(log);
    REQUIRE(use.spans.size() == 2);
    CHECK_FALSE(use.spans[0].consumption);
    CHECK(use.spans[1].from_id == use.spans[0].to_id);
    CHECK(use.overall->litres_per_100km == Approx(5));
}

TEST_CASE("The published method: litres of all fills x 100 / km", "[outside][fuel]") {
    const CheckRow& row = row_that_starts("method text");
    TESTING_ROW(row);
    const auto use = use_of(published_log(true));
    CHECK(use.overall->litres_per_100km == Approx((8.2 + 7.1 + 9.5) * 100 / 500));
}
