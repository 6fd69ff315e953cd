// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/usage/oil_use.h"

#include "tests/catch.h"
#include "tests/model/bike_log.h"

using namespace sumpbook;
using namespace sumpbook::testing;
using usage::OdometerSeries;
using usage::oil_use;
using usage::OilUseAgainst;
using usage::OilUseVerdict;

namespace {

TopUp topped(std::string_view volume, std::string_view level_after = {}) {
    TopUp top_up;
    top_up.volume = litres(volume);
    if (!level_after.empty()) top_up.level_after = number(level_after);
    return top_up;
}

usage::OilUseResult use_of(const BikeLog& log) { return oil_use(log.bike, OdometerSeries::of(log.bike)); }

} // namespace

TEST_CASE("Top-ups to the mark measure what was used since the refill") {
    BikeLog log;
    log.add("2023-01-01", OilChange{}, "5000");
    log.add("2023-03-01", topped("0.2"), "6000"); // to somewhere
    log.add("2023-06-01", topped("0.4", "1"), "7000");
    log.add("2023-07-01", topped("0.5"), "8000"); // after the last known level: not counted
    const auto use = use_of(log);
    REQUIRE(use.fills.size() == 1);
    CHECK(*use.fills[0].litres_used == Approx(0.6));
    CHECK(use.fills[0].over == Distance::from_whole_km(2000));
    CHECK(*use.litres_per_1000km == Approx(0.3));
}

TEST_CASE("A fall of level counts as used") {
    BikeLog log;
    log.bike.details.value.between_level_marks = litres("1");
    log.add("2023-01-01", OilChange{}, "5000");
    log.add("2023-06-01", topped("0.5", "0.75"), "7000");
    CHECK(*use_of(log).fills[0].litres_used == Approx(0.75));
}

TEST_CASE("Without a second known level there is a lower bound only") {
    BikeLog log;
    log.add("2023-01-01", OilChange{}, "5000");
    log.add("2023-06-01", topped("0.5"), "7000");
    const auto use = use_of(log);
    CHECK_FALSE(use.fills[0].litres_per_1000km);
    CHECK(*use.fills[0].at_least_litres_per_1000km == Approx(0.25));
    CHECK_FALSE(use.litres_per_1000km);
    CHECK(use.verdict == OilUseVerdict::unknown);
}

TEST_CASE("A top-up of an unknown amount leaves no figure") {
    BikeLog log;
    log.add("2023-01-01", OilChange{}, "5000");
    log.add("2023-03-01", TopUp{}, "6000");
    log.add("2023-06-01", topped("0.4", "1"), "7000");
    CHECK_FALSE(use_of(log).fills[0].litres_per_1000km);
}

TEST_CASE("Overall is litres over distance, run-in apart") {
    BikeLog log;
    log.reading("2022-01-01", "0");
    log.add("2022-01-02", OilChange{}, "10");
    log.add("2022-03-01", topped("1", "1"), "1010");
    log.add("2022-04-01", OilChange{}, "1100");
    log.add("2022-06-01", topped("0.1", "1"), "2100");
    log.add("2022-07-01", OilChange{}, "3000");
    log.add("2022-09-01", topped("0.6", "1"), "6000");
    const auto use = use_of(log);
    CHECK(*use.run_in_litres_per_1000km == Approx(1.0));
    CHECK(*use.litres_per_1000km == Approx(0.7 / 4));
}

TEST_CASE("The owner's manual comes before published figures") {
    BikeLog log;
    log.add("2023-01-01", OilChange{}, "5000");
    log.add("2023-06-01", topped("0.8", "1"), "7000");
    CHECK(use_of(log).against == OilUseAgainst::published);
    CHECK(use_of(log).verdict == OilUseVerdict::in_range);
    log.bike.details.value.handbook_oil_use_l_per_1000km = number("0.4");
    CHECK(use_of(log).against == OilUseAgainst::handbook);
    CHECK(use_of(log).verdict == OilUseVerdict::within);
    log.bike.details.value.handbook_oil_use_l_per_1000km = number("0.39");
    CHECK(use_of(log).verdict == OilUseVerdict::above);
}

TEST_CASE("Outside the published range it says so") {
    BikeLog log;
    log.add("2023-01-01", OilChange{}, "5000");
    log.add("2023-06-01", topped("0.4", "1"), "7000");
    CHECK(use_of(log).verdict == OilUseVerdict::below_range);
    log.add("2023-07-01", topped("4", "1"), "8000");
    CHECK(use_of(log).verdict == OilUseVerdict::above_range);
}

TEST_CASE("Every published figure names its source and how it is known") {
    CHECK(usage::published_oil_use().size() == 8);
    for (const auto& row : usage::published_oil_use()) {
        CHECK_FALSE(row.source.empty());
        CHECK_FALSE(row.evidence.empty());
        CHECK(row.litres_per_1000km > 0);
    }
}
