// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/oil/rates.h"
#include "tests/model/oil/oil_garage.h"

#include "tests/catch.h"

using namespace sumpbook;
using namespace sumpbook::oil;
using namespace sumpbook::oil::testing;

namespace {

LimitRow trend_limit(const char* ppm) {
    LimitRow row;
    row.basis = Basis::trend;
    row.op = Operator::at_least;
    row.value = number(ppm);
    return row;
}

BetweenSamples hours(const char* amount) {
    BetweenSamples between;
    between.time.amount = number(amount);
    return between;
}

} // namespace

TEST_CASE("A rate comes per 10 hours and per 1 000 km", "[oil]") {
    BetweenSamples span = hours("20");
    span.distance = Distance::from_whole_km(1000);
    const auto rate = element_rate(value("Fe", "40"), value("Fe", "60"), span, std::nullopt);
    REQUIRE(rate);
    CHECK(rate->low_ppm_per_10h == 10);
    CHECK(rate->ppm_per_1000km->first == 20);
    CHECK(rate->standing == RateStanding::rated);
    CHECK(rate->is_rising());
    CHECK_FALSE(rate->abnormal.has_value());
}

TEST_CASE("Five hours at 50 km/h are 250 km, to the last metre", "[oil]") {
    BetweenSamples span;
    span.time = {number("250"), number("50")};
    CHECK_FALSE(is_too_short(span.time));
    span.time.amount = number("249.999");
    CHECK(is_too_short(span.time));
    CHECK(reaches_trend(number("14"), {number("250"), number("50")}, number("28")) == true);
    CHECK(reaches_trend(number("13.999"), {number("250"), number("50")}, number("28")) == false);
}

TEST_CASE("A change the method cannot repeat is no real change", "[oil]") {
    const auto rate = element_rate(value("Fe", "40"), value("Fe", "41"), hours("10"), trend_limit("1"));
    CHECK(rate->standing == RateStanding::no_real_change);
    CHECK_FALSE(rate->abnormal.has_value());
    CHECK_FALSE(rate->is_rising());
}

TEST_CASE("Two laboratories must differ by more than one", "[oil]") {
    BetweenSamples span = hours("10");
    CHECK(element_rate(value("Fe", "40"), value("Fe", "45"), span, std::nullopt)->standing ==
          RateStanding::rated);
    span.laboratories_differ = true;
    CHECK(element_rate(value("Fe", "40"), value("Fe", "45"), span, std::nullopt)->standing ==
          RateStanding::no_real_change);
}

TEST_CASE("Noise is not tested where no precision is published, and the rate counts all the same", "[oil]") {
    const auto rate = element_rate(value("Mg", "3"), value("Mg", "4"), hours("10"), trend_limit("1"));
    CHECK_FALSE(rate->noise_tested);
    CHECK(rate->abnormal == true);
}

TEST_CASE("Below detection gives a range of rates", "[oil]") {
    const auto clear = element_rate(value("Cr", "<1"), value("Cr", "9"), hours("10"), trend_limit("4"));
    CHECK(clear->low_ppm_per_10h == 8);
    CHECK(clear->high_ppm_per_10h == 9);
    CHECK(clear->abnormal == true);
    CHECK(clear->is_rising());
    const auto open = element_rate(value("Cr", "<6"), value("Cr", "9"), hours("10"), trend_limit("4"));
    CHECK(open->standing == RateStanding::open);
    CHECK_FALSE(open->abnormal.has_value());
    CHECK_FALSE(open->is_rising());
}

TEST_CASE("Without time, an amount or its unit there is no rate", "[oil]") {
    CHECK_FALSE(element_rate(value("Fe", "4"), value("Fe", "9"), hours("0"), std::nullopt).has_value());
    CHECK_FALSE(
        element_rate(value("Fe", "detected"), value("Fe", "9"), hours("9"), std::nullopt).has_value());
    CHECK_FALSE(
        element_rate(value("Fe", "4", "counts"), value("Fe", "9"), hours("9"), std::nullopt).has_value());
}
