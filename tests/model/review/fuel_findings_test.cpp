// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/review/fuel_findings.h"

#include "tests/catch.h"

using namespace sumpbook;
using namespace sumpbook::review;

namespace {

/// Full fills of 15 L every 300 km at 1.80 EUR/L: 5 L/100 km.
Bike bike_with(int fills) {
    Bike bike;
    bike.details.value.name = "Old twin";
    for (int i = 0; i < fills; ++i) {
        LogEntry logged;
        logged.id = "a-" + std::to_string(i + 1);
        logged.value.date = plus_days(std::chrono::year{2024} / 4 / 1, 7 * i);
        logged.value.odometer = WrittenDistance{Decimal{10000 + 300 * i}, DistanceUnit::km};
        logged.value.body = Fuel{.volume = WrittenVolume{Decimal{15}, VolumeUnit::l}};
        logged.value.paid = Money{2700, Currency::from_code("EUR").value()};
        bike.log.push_back(std::move(logged));
    }
    return bike;
}

Fuel& fuel_of(LogEntry& logged) { return std::get<Fuel>(logged.value.body); }

std::vector<std::string> ids(const Bike& bike) {
    std::vector<std::string> found;
    for (const auto& finding : fuel_findings(bike))
        found.push_back(finding.id);
    return found;
}

using Ids = std::vector<std::string>;

} // namespace

TEST_CASE("fills like all others are no finding") {
    CHECK(fuel_findings(bike_with(8)).empty());
    CHECK(fuel_findings(Bike{}).empty());
}

TEST_CASE("a fill far outside the bike's own is named by consumption and by price") {
    auto bike = bike_with(7);
    auto& last = bike.log.back();
    last.value.odometer = WrittenDistance{Decimal{11505}, DistanceUnit::km}; // 5 km after the one before
    fuel_of(last).volume = WrittenVolume{Decimal{19}, VolumeUnit::l};
    last.value.paid->minor = 40'000;
    const auto findings = fuel_findings(bike);
    REQUIRE(findings.size() == 2);
    CHECK(findings[0].id == "consumption-unusual");
    CHECK(findings[0].severity == Severity::doubt);
    CHECK(findings[0].entry_ids == Ids{"a-7", "a-6"});
    // 19 L over 5 km = 380 L/100 km; the median of five stretches of 5.0 and this one is 5.0.
    CHECK(findings[0].sentence.find("19.00 L over 5 km would be 380.0 L/100 km") != std::string::npos);
    CHECK(findings[0].sentence.find("is 5.0 L/100 km") != std::string::npos);
    CHECK(findings[1].id == "fuel-price-unusual");
    CHECK(findings[1].entry_ids == Ids{"a-7"});
    CHECK(findings[1].sentence.find("21.053 EUR/L") != std::string::npos); // 400 / 19
    CHECK(findings[1].sentence.find("1.800 EUR/L") != std::string::npos);
}

TEST_CASE("far outside begins at three times and at a third of the usual") {
    auto bike = bike_with(7);
    bike.log.back().value.paid.reset();
    auto& volume = fuel_of(bike.log.back()).volume;
    volume = WrittenVolume{Decimal{449, 1}, VolumeUnit::l};
    CHECK(ids(bike).empty());
    volume = WrittenVolume{Decimal{451, 1}, VolumeUnit::l};
    CHECK(ids(bike) == Ids{"consumption-unusual"});
    volume = WrittenVolume{Decimal{49, 1}, VolumeUnit::l};
    CHECK(ids(bike) == Ids{"consumption-unusual"});
    volume = WrittenVolume{Decimal{51, 1}, VolumeUnit::l};
    CHECK(ids(bike).empty());
}

TEST_CASE("too few figures say nothing") {
    auto bike = bike_with(5); // four stretches, five prices
    fuel_of(bike.log.back()).volume = WrittenVolume{Decimal{90}, VolumeUnit::l};
    CHECK(ids(bike) == Ids{"fuel-price-unusual"});
    bike = bike_with(4);
    fuel_of(bike.log.back()).volume = WrittenVolume{Decimal{90}, VolumeUnit::l};
    CHECK(ids(bike).empty());
}

TEST_CASE("prices of another currency are compared among themselves, and a price typed counts") {
    auto bike = bike_with(8);
    bike.log.back().value.paid = Money{15'000, Currency::from_code("CZK").value()};
    CHECK(ids(bike).empty());
    bike.log.back().value.paid.reset();
    // 1.80 EUR/L is 6.81 EUR per US gallon (3.785 L); 68.1 is ten times as much.
    UnitPrice price{Decimal{681, 2}, Currency::from_code("EUR").value(), VolumeUnit::us_gal};
    fuel_of(bike.log.back()).price = price;
    CHECK(ids(bike).empty());
    price.amount = Decimal{681, 1};
    fuel_of(bike.log.back()).price = price;
    CHECK(ids(bike) == Ids{"fuel-price-unusual"});
}

TEST_CASE("a stretch with a fill that was not recorded is void and no finding") {
    auto bike = bike_with(7);
    fuel_of(bike.log.back()).volume = WrittenVolume{Decimal{46}, VolumeUnit::l};
    bike.log.back().value.paid.reset();
    fuel_of(bike.log.back()).missed_before = true;
    CHECK(ids(bike).empty());
}
