// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/usage/odometer.h"

#include "tests/catch.h"
#include "tests/model/bike_log.h"

#include <rapidcheck.h>

using namespace sumpbook;
using namespace sumpbook::testing;
using usage::OdometerFlagKind;
using usage::OdometerSeries;

namespace {

Distance whole_km(std::int64_t km) { return Distance::from_whole_km(km); }

} // namespace

TEST_CASE("Without a reading there is no distance") {
    BikeLog log;
    log.add("2024-01-01", Note{});
    const auto series = OdometerSeries::of(log.bike);
    CHECK_FALSE(series.span());
    CHECK_FALSE(series.position(day("2024-01-01")));
    CHECK_FALSE(series.period(day("2024-01-01"), day("2024-02-01")));
}

TEST_CASE("Readings come from every kind of entry and stay as written") {
    BikeLog log;
    log.reading("2024-01-01", "1000.50");
    log.work("2024-02-01", "1500", {"engine-oil"});
    log.add("2024-03-01", Note{}, "2000");
    const auto series = OdometerSeries::of(log.bike);
    REQUIRE(series.readings().size() == 3);
    CHECK(series.readings()[0].written.number.text() == "1000.50");
    CHECK(series.span()->distance() == Distance::from_km(999.5));
    CHECK(series.span()->days() == 60);
}

TEST_CASE("A reading below the ones before it is kept, flagged and left out") {
    BikeLog log;
    log.reading("2024-01-01", "10000");
    log.reading("2024-02-01", "10500");
    const auto& wrong = log.reading("2024-03-01", "1100");
    const std::string wrong_id = wrong.id;
    log.reading("2024-04-01", "11500");
    const auto series = OdometerSeries::of(log.bike);
    CHECK(series.readings().size() == 4);
    REQUIRE(series.flags().size() == 1);
    CHECK(series.flags()[0].kind == OdometerFlagKind::falls);
    CHECK(usage::slug(series.flags()[0].kind) == "odometer-falls");
    CHECK(series.flags()[0].entry_id == wrong_id);
    CHECK(series.flags()[0].against_ids == std::vector<std::string>{"k7-2", "k7-4"});
    CHECK_FALSE(series.of_entry(wrong_id));
    CHECK(series.span()->at_last == whole_km(11500));
}

TEST_CASE("One digit too many does not throw out what follows") {
    BikeLog log;
    for (const auto& [date, odometer] : {std::pair{"2024-01-01", "1000"},
                                         {"2024-02-01", "12000"},
                                         {"2024-03-01", "1400"},
                                         {"2024-04-01", "1600"}})
        log.reading(date, odometer);
    const auto series = OdometerSeries::of(log.bike);
    REQUIRE(series.flags().size() == 1);
    CHECK(series.flags()[0].entry_id == "k7-2");
}

TEST_CASE("More than 2 500 km a day stays accepted and is flagged") {
    BikeLog log;
    log.reading("2024-01-01", "1000");
    log.reading("2024-01-02", "3500");
    log.reading("2024-01-03", "6000.1");
    const auto series = OdometerSeries::of(log.bike);
    REQUIRE(series.flags().size() == 1);
    CHECK(series.flags()[0].kind == OdometerFlagKind::leaps);
    CHECK(series.flags()[0].entry_id == "k7-3");
    CHECK(series.flags()[0].against_ids == std::vector<std::string>{"k7-2"});
    CHECK(series.of_entry("k7-3") == Distance::from_km(6000.1));
}

TEST_CASE("Readings of one day count in the order recorded, the last for the day") {
    BikeLog log;
    log.reading("2024-01-01", "1000");
    log.reading("2024-01-01", "1200");
    log.reading("2024-01-03", "1400");
    const auto series = OdometerSeries::of(log.bike);
    CHECK(series.position(day("2024-01-01")) == whole_km(1200));
    CHECK(series.position(day("2024-01-02")) == whole_km(1300));
    CHECK(series.span()->distance() == whole_km(200));
}

TEST_CASE("A new dial keeps the true distance") {
    BikeLog log;
    log.reading("2024-01-01", "45000");
    Reading change;
    change.clock_change = ClockChange{km("45100"), km("0")};
    log.add("2024-01-10", change);
    log.reading("2024-02-10", "500");
    const auto series = OdometerSeries::of(log.bike);
    CHECK(series.flags().empty());
    CHECK(series.position(day("2024-01-10")) == whole_km(45100));
    CHECK(series.span()->at_last == whole_km(45600));
}

TEST_CASE("A clock change counts though its own reading is rejected") {
    BikeLog log;
    log.reading("2024-01-01", "45000");
    log.reading("2024-01-05", "45050");
    Reading change;
    change.clock_change = ClockChange{km("44900"), km("0")}; // the old dial was read wrong
    log.add("2024-01-10", change);
    log.reading("2024-02-10", "500");
    log.reading("2024-03-10", "900");
    const auto series = OdometerSeries::of(log.bike);
    REQUIRE(series.flags().size() == 1);
    CHECK(series.flags()[0].entry_id == "k7-3");
    CHECK(series.span()->at_last == whole_km(45800));
}

TEST_CASE("A period outside the record is cut to what is covered") {
    BikeLog log;
    log.reading("2024-01-11", "1000");
    log.reading("2024-01-31", "3000");
    const auto series = OdometerSeries::of(log.bike);
    const auto january = series.period(day("2024-01-01"), day("2024-01-21"));
    REQUIRE(january);
    CHECK(january->from == day("2024-01-11"));
    CHECK(january->to == day("2024-01-21"));
    CHECK(january->distance == whole_km(1000));
    CHECK_FALSE(january->whole_period);
    CHECK(series.period(day("2024-01-12"), day("2024-01-31"))->whole_period);
    CHECK_FALSE(series.period(day("2023-01-01"), day("2023-12-31")));
    CHECK_FALSE(series.period(day("2024-02-01"), day("2024-12-31")));
}

TEST_CASE("The day a distance was reached") {
    BikeLog log;
    log.reading("2024-01-01", "1000");
    log.reading("2024-01-11", "2000");
    const auto series = OdometerSeries::of(log.bike);
    CHECK(series.day_reached(whole_km(1000)) == day("2024-01-01"));
    CHECK(series.day_reached(whole_km(1500)) == day("2024-01-06"));
    CHECK(series.day_reached(whole_km(1501)) == day("2024-01-07"));
    CHECK_FALSE(series.day_reached(whole_km(999)));
    CHECK_FALSE(series.day_reached(whole_km(2001)));
}

TEST_CASE("Months add up to the year, and positions never fall") {
    CHECK(rc::check("for any record", [] {
        BikeLog log;
        for (int i = 0; i < 30; ++i) {
            const auto date = plus_days(day("2023-11-01"), *rc::gen::inRange(0, 500));
            log.reading(iso_text(date), std::to_string(*rc::gen::inRange(0, 60000)));
        }
        const auto series = OdometerSeries::of(log.bike);
        Distance months;
        for (int month = 0; month < 12; ++month) {
            const auto from = plus_months(day("2024-01-01"), month);
            if (const auto part = series.period(from, plus_days(plus_months(from, 1), -1))) {
                RC_ASSERT(part->distance >= Distance{});
                months += part->distance;
            }
        }
        const auto year = series.period(day("2024-01-01"), day("2024-12-31"));
        RC_ASSERT(months == (year ? year->distance : Distance{}));
    }));
}

TEST_CASE("Accepted readings never fall and the longest run is at least any one reading") {
    CHECK(rc::check("for any record", [] {
        BikeLog log;
        const int count = *rc::gen::inRange(1, 40);
        for (int i = 0; i < count; ++i)
            log.reading(iso_text(plus_days(day("2023-01-01"), i)),
                        std::to_string(*rc::gen::inRange(0, 5000)));
        const auto series = OdometerSeries::of(log.bike);
        Distance before;
        std::size_t accepted = 0;
        for (const auto& reading : series.readings()) {
            if (!reading.accepted) continue;
            RC_ASSERT(reading.distance >= before);
            before = reading.distance;
            ++accepted;
        }
        RC_ASSERT(accepted >= 1U);
    }));
}

TEST_CASE("An entry stands at its own reading, else where its day stood") {
    BikeLog log;
    log.reading("2024-01-01", "1000");
    const LogEntry noted = log.add("2024-01-03", Note{});
    const LogEntry read = log.reading("2024-01-03", "1100");
    log.reading("2024-01-03", "1200");
    const LogEntry later = log.add("2024-01-04", Note{});
    const auto odometer = OdometerSeries::of(log.bike);
    CHECK(odometer.at_entry(noted) == Distance::from_whole_km(1200));
    CHECK(odometer.at_entry(read) == Distance::from_whole_km(1100));
    CHECK_FALSE(odometer.at_entry(later).has_value());
}
