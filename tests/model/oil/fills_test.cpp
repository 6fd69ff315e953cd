// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/oil/fills.h"
#include "model/oil/history.h"
#include "model/oil/reference_oil.h"
#include "tests/model/oil/oil_garage.h"

#include "tests/catch.h"

using namespace sumpbook;
using namespace sumpbook::oil;
using namespace sumpbook::oil::testing;

namespace {

FilledSample filled(OilGarage& garage) {
    const auto samples = used_samples(garage.bike(), "engine");
    return fill_of(OilRecord::of(garage.garage, garage.bike()), *samples.back());
}

} // namespace

TEST_CASE("A sample of the day of a change is of the oil that was drained", "[oil]") {
    OilGarage garage;
    garage.fill("2024-01-02", "10W-40", "Marsh 4T", 10000);
    garage.fill("2024-06-01", "10W-50", "Marsh Race", 16000);
    garage.draw("2024-06-01", {value("Fe", "40")}, 16000);
    CHECK(filled(garage).oil_change->sae_grade == std::optional<std::string>("10W-40"));
    CHECK(filled(garage).distance_on_oil == Distance::from_whole_km(6000));
}

TEST_CASE("A sample names its oil change by date", "[oil]") {
    OilGarage garage;
    garage.fill("2024-01-02", "10W-40", "Marsh 4T", 10000);
    garage.fill("2024-06-01", "10W-50", "Marsh Race", 16000);
    auto& entry = garage.draw("2024-06-01", {value("Fe", "4")}, 16000);
    std::get<Sample>(entry.value.body).oil_change_date = day("2024-06-01");
    CHECK(filled(garage).oil_change->sae_grade == std::optional<std::string>("10W-50"));
    CHECK(filled(garage).distance_on_oil == Distance{});
}

TEST_CASE("Distance on the oil is what was typed, else from the odometer", "[oil]") {
    OilGarage garage;
    garage.fill("2024-01-02", "10W-40", "Marsh 4T", 10000);
    auto& entry = garage.draw("2024-06-01", {value("Fe", "40")}, 14500);
    CHECK(filled(garage).distance_on_oil == Distance::from_whole_km(4500));
    std::get<Sample>(entry.value.body).distance_on_oil = WrittenDistance{Decimal{4000}, DistanceUnit::km};
    CHECK(filled(garage).distance_on_oil == Distance::from_whole_km(4000));
}

TEST_CASE("A sample before any oil change has a fill without a beginning", "[oil]") {
    OilGarage garage;
    garage.draw("2024-06-01", {value("Fe", "40")}, 14500);
    CHECK(filled(garage).oil_change == nullptr);
    CHECK_FALSE(filled(garage).distance_on_oil.has_value());
}

TEST_CASE("The new oil's sample is found by number, else by the oil's name, also on another bike", "[oil]") {
    OilGarage garage;
    garage.new_oil("2023-01-01", {value("Fe", "1")}, "Marsh 4T");
    garage.new_oil("2024-01-01", {value("Fe", "2")}, "marsh 4t");
    garage.new_oil("2024-09-01", {value("Fe", "3")}, "Marsh 4T");
    garage.fill("2024-01-02");
    const auto& change = std::get<OilChange>(garage.bike().log.back().value.body);
    const auto found = [&](const OilChange& of, const Bike& bike) {
        return reference_oil(garage.garage, bike, &of, day("2024-06-01"));
    };
    CHECK(found(change, garage.bike()).value("Fe")->number == Decimal{2});
    OilChange named = change;
    named.virgin_sample = "N1";
    CHECK(found(named, garage.bike()).value("Fe")->number == Decimal{1});
    garage.garage.bikes.push_back({});
    CHECK(found(change, garage.garage.bikes.back()).value("Fe")->number == Decimal{2});
    OilChange other = change;
    other.oil_name = "Something else";
    CHECK_FALSE(found(other, garage.bike()).sample.has_value());
}

TEST_CASE("History knows the sample before, in this fill and in earlier ones", "[oil]") {
    OilGarage garage;
    garage.fill("2024-01-02", "10W-40", "Marsh 4T", 10000);
    garage.draw("2024-02-01", {value("Si", "30")}, 11000);
    garage.draw("2024-05-01", {value("Si", "40")}, 14000);
    garage.fill("2024-06-01", "10W-40", "Marsh 4T", 16000);
    garage.draw("2024-07-01", {value("Si", "25")}, 17000);
    const OilRecord record = OilRecord::of(garage.garage, garage.bike());
    const FilledSample latest = filled(garage);
    const SampleHistory history = history_of(record, latest);
    CHECK(history.previous->entry->id == "k7-3");
    CHECK_FALSE(history.previous_in_fill.has_value());
    REQUIRE(history.earlier_fills.size() == 1);
    CHECK(history.earlier_fills[0].entry->id == "k7-3");
    CHECK(silicon_fell_with_each_fill(latest, history));
}

TEST_CASE("Running time is the meter's, else distance over speed", "[oil]") {
    OilGarage garage;
    garage.fill("2024-01-02", "10W-40", "Marsh 4T", 10000);
    garage.draw("2024-02-01", {value("Fe", "30")}, 11000);
    garage.draw("2024-05-01", {value("Fe", "40")}, 11500);
    const auto span = [&] {
        const OilRecord record = OilRecord::of(garage.garage, garage.bike());
        const FilledSample latest = filled(garage);
        return between(record, *history_of(record, latest).previous_in_fill, latest).value();
    };
    CHECK(span().time.hours() == 10);
    CHECK_FALSE(span().time.is_metered());
    garage.details().average_speed_km_h = Decimal{100};
    CHECK(span().time.hours() == 5);
    garage.bike().log[1].value.hours = number("200");
    garage.bike().log[2].value.hours = number("207.5");
    CHECK(span().time.hours() == 7.5);
    CHECK(span().time.is_metered());
    CHECK(span().distance == Distance::from_whole_km(500));
}

TEST_CASE("Wear metals fell together only where each fell by more than chance", "[oil]") {
    OilGarage garage;
    garage.fill("2024-01-02");
    garage.draw("2024-02-01", {value("Fe", "60"), value("Cu", "20"), value("Ni", "<1")});
    garage.draw("2024-05-01", {value("Fe", "30"), value("Cu", "10"), value("Ni", "2")});
    const auto fell = [&] {
        const OilRecord record = OilRecord::of(garage.garage, garage.bike());
        const FilledSample latest = filled(garage);
        return wear_metals_fell(latest, history_of(record, latest));
    };
    CHECK(fell());
    std::get<Sample>(garage.bike().log[2].value.body).values[1].number = Decimal{19};
    CHECK_FALSE(fell());
}

TEST_CASE("An engine's hours count from the day it was fitted", "[oil]") {
    OilGarage garage;
    garage.fill("2024-01-02", "10W-40", "Marsh 4T", 10000);
    garage.draw("2024-05-01", {value("Cr", "12")}, 15000);
    const auto hours = [&] {
        return engine_hours(OilRecord::of(garage.garage, garage.bike()), filled(garage)).value();
    };
    CHECK(hours() == Approx(300));
    OilGarage rebuilt;
    rebuilt.fill("2024-01-02", "10W-40", "Marsh 4T", 10000);
    Fit engine;
    engine.slot = "engine";
    engine.hours_before = Decimal{20};
    rebuilt.add("2024-02-01", engine, 14000);
    rebuilt.draw("2024-05-01", {value("Cr", "12")}, 15000);
    CHECK(engine_hours(OilRecord::of(rebuilt.garage, rebuilt.bike()), filled(rebuilt)).value() == Approx(40));
}

TEST_CASE("Silicon falls only where each fill holds less than the one before, in one unit", "[oil]") {
    const auto falls = [](const std::vector<SampleValue>& fills) {
        OilGarage garage;
        int month = 0;
        for (const SampleValue& silicon : fills) {
            const std::string year_month = "2024-0" + std::to_string(++month);
            garage.fill(year_month + "-02", "10W-40", "Marsh 4T", 10000 + 1000 * month);
            garage.draw(year_month + "-20", {silicon}, 10500 + 1000 * month);
        }
        const OilRecord record = OilRecord::of(garage.garage, garage.bike());
        const FilledSample latest = filled(garage);
        return silicon_fell_with_each_fill(latest, history_of(record, latest));
    };
    CHECK(falls({value("Si", "40"), value("Si", "30"), value("Si", "20")}));
    CHECK_FALSE(falls({value("Si", "10"), value("Si", "40"), value("Si", "25")})); // rose in between
    CHECK_FALSE(falls({value("Si", "40"), value("Si", "25"), value("Si", "25")}));
    CHECK_FALSE(falls({value("Si", "40"), value("Si", "<30"), value("Si", "20")}));
    CHECK_FALSE(falls({value("Si", "40")}));
    CHECK(falls({value("Si", "0.004", "%"), value("Si", "30")})); // 40 mg/kg
    CHECK_FALSE(falls({value("Si", "20"), value("Si", "0.003", "%")}));
}
