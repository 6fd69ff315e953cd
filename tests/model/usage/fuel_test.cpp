// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/usage/fuel.h"

#include "tests/catch.h"
#include "tests/model/bike_log.h"

#include <rapidcheck.h>

using namespace sumpbook;
using namespace sumpbook::testing;
using usage::fuel_use;
using usage::FuelUse;
using usage::OdometerSeries;
using usage::SpanVoid;

namespace {

Fuel filled(std::string_view volume, bool full = true) {
    Fuel fuel;
    fuel.volume = litres(volume);
    fuel.full = full;
    return fuel;
}

FuelUse use_of(const BikeLog& log) { return fuel_use(log.bike, OdometerSeries::of(log.bike)); }

} // namespace

TEST_CASE("Part fills are carried into the next full one") {
    BikeLog log;
    log.add("2024-05-01", filled("12"), "10000");
    log.add("2024-05-02", filled("8.2", false), "10180");
    log.add("2024-05-03", filled("7.1"), "10310");
    const auto use = use_of(log);
    REQUIRE(use.spans.size() == 1);
    CHECK(use.spans[0].distance == Distance::from_whole_km(310));
    CHECK(use.spans[0].fuel.litres() == Approx(15.3));
    CHECK(use.spans[0].fill_ids == std::vector<std::string>{"k7-2", "k7-3"});
    REQUIRE(use.spans[0].consumption);
    CHECK(use.spans[0].consumption->litres_per_100km == Approx(4.935484).epsilon(1e-6));
}

TEST_CASE("The fuel of the first full fill does not count, nor what follows the last") {
    BikeLog log;
    log.add("2024-05-01", filled("50"), "10000");
    CHECK(use_of(log).spans.empty());
    CHECK_FALSE(use_of(log).overall);
    log.add("2024-05-03", filled("5"), "10100");
    log.add("2024-05-04", filled("3", false), "10140");
    CHECK(use_of(log).overall->litres_per_100km == Approx(5));
}

TEST_CASE("A missed fill voids the span it stands in, and the next one is sound") {
    BikeLog log;
    log.add("2024-05-01", filled("10"), "10000");
    auto& missed = log.add("2024-05-02", filled("6", false), "10400");
    std::get<Fuel>(missed.value.body).missed_before = true;
    log.add("2024-05-03", filled("6"), "10500");
    log.add("2024-05-04", filled("5"), "10600");
    const auto use = use_of(log);
    REQUIRE(use.spans.size() == 2);
    CHECK(use.spans[0].void_because == SpanVoid::missed_fill);
    CHECK_FALSE(use.spans[0].consumption);
    CHECK(use.spans[1].consumption->litres_per_100km == Approx(5));
    CHECK(use.overall->litres_per_100km == Approx(5));
}

TEST_CASE("A full fill without an accepted reading carries on") {
    BikeLog log;
    log.add("2024-05-01", filled("10"), "10000");
    log.add("2024-05-02", filled("6"));
    log.add("2024-05-03", filled("6"), "1020"); // a digit is missing: rejected
    log.add("2024-05-04", filled("4"), "10400");
    const auto use = use_of(log);
    REQUIRE(use.spans.size() == 1);
    CHECK(use.spans[0].fuel.litres() == Approx(16));
    CHECK(use.spans[0].consumption->litres_per_100km == Approx(4));
}

TEST_CASE("Two full fills at one place give no consumption") {
    BikeLog log;
    log.add("2024-05-01", filled("10"), "10000");
    log.add("2024-05-01", filled("0.5"), "10000");
    log.add("2024-05-04", filled("5"), "10100");
    const auto use = use_of(log);
    REQUIRE(use.spans.size() == 2);
    CHECK(use.spans[0].void_because == SpanVoid::no_distance);
    CHECK(use.overall->litres_per_100km == Approx(5));
}

TEST_CASE("A fill whose amount could not be read voids its span") {
    BikeLog log;
    log.add("2024-05-01", filled("10"), "10000");
    log.add("2024-05-02", Fuel{}, "10100");
    const auto use = use_of(log);
    REQUIRE(use.spans.size() == 1);
    CHECK(use.spans[0].void_because == SpanVoid::no_volume);
    CHECK_FALSE(use.overall);
}

TEST_CASE("Without an odometer the trip distance stands in") {
    BikeLog log;
    for (const auto* date : {"2024-05-01", "2024-05-05", "2024-05-09"}) {
        auto fuel = filled("6");
        fuel.trip = km("120");
        log.add(date, fuel);
    }
    const auto use = use_of(log);
    REQUIRE(use.spans.size() == 2);
    CHECK(use.spans[0].by_trip);
    CHECK(use.overall->litres_per_100km == Approx(5));
}

TEST_CASE("A trip between two odometer readings is not used") {
    BikeLog log;
    auto fuel = filled("5");
    fuel.trip = km("999");
    log.add("2024-05-01", fuel, "10000");
    log.add("2024-05-02", fuel, "10100");
    CHECK(use_of(log).overall->litres_per_100km == Approx(5));
}

TEST_CASE("A record that begins without a reading starts at the first fill with one") {
    BikeLog log;
    log.add("2024-05-01", filled("10"));
    log.add("2024-05-02", filled("9"), "10000");
    log.add("2024-05-03", filled("5"), "10100");
    const auto use = use_of(log);
    REQUIRE(use.spans.size() == 1);
    CHECK(use.overall->litres_per_100km == Approx(5));
}

TEST_CASE("Litres and miles of the pump and the dial are exact") {
    BikeLog log;
    log.bike.details.value.odometer_unit = DistanceUnit::mi;
    Fuel fuel;
    fuel.volume = WrittenVolume{number("2"), VolumeUnit::us_gal};
    log.add("2024-05-01", fuel, "5000");
    log.add("2024-05-02", fuel, "5100");
    CHECK(use_of(log).overall->in(ConsumptionUnit::mpg_us) == Approx(50).epsilon(1e-12));
}

TEST_CASE("Overall lies between the best and the worst sound span") {
    CHECK(rc::check("for any log of fills", [] {
        BikeLog log;
        int odometer = 1000;
        for (int i = 0; i < 20; ++i) {
            odometer += *rc::gen::inRange(0, 400);
            auto fuel = filled(std::to_string(*rc::gen::inRange(1, 20)), *rc::gen::inRange(0, 3) != 0);
            fuel.missed_before = *rc::gen::inRange(0, 8) == 0;
            log.add(iso_text(plus_days(day("2024-01-01"), i)), fuel, std::to_string(odometer));
        }
        const auto use = use_of(log);
        double best = 1e9;
        double worst = 0;
        for (const auto& span : use.spans) {
            RC_ASSERT(span.consumption.has_value() != span.void_because.has_value());
            if (!span.consumption) continue;
            best = std::min(best, span.consumption->litres_per_100km);
            worst = std::max(worst, span.consumption->litres_per_100km);
        }
        RC_ASSERT(use.overall.has_value() == (worst > 0));
        if (!use.overall) return;
        RC_ASSERT(use.overall->litres_per_100km >= best * (1 - 1e-12));
        RC_ASSERT(use.overall->litres_per_100km <= worst * (1 + 1e-12));
    }));
}
