// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/review/faults.h"

#include "tests/catch.h"
#include "tests/model/bike_log.h"

using namespace sumpbook;
using namespace sumpbook::review;
using sumpbook::testing::BikeLog;

namespace {

Fault fault(std::string code, std::optional<std::uint32_t> count, bool cleared = false) {
    Fault made;
    made.code = std::move(code);
    made.count = count;
    made.cleared = cleared;
    return made;
}

std::vector<FaultHistory> histories(const BikeLog& log) {
    return fault_histories(log.bike, usage::OdometerSeries::of(log.bike));
}

} // namespace

TEST_CASE("a fault that comes back after clearing is present, counted by rate on both sides") {
    BikeLog log;
    log.reading("2024-01-01", "1000");
    log.add("2024-03-01", fault("P0335", 3, true), "3000");
    log.add("2024-05-01", fault("P0335", 4), "3400");
    log.reading("2024-06-01", "4000");
    const auto found = histories(log);
    REQUIRE(found.size() == 1);
    CHECK(found[0].state == FaultState::present);
    CHECK(found[0].times() == 7);
    REQUIRE(found[0].before() != nullptr);
    CHECK(found[0].before()->times_per_1000km == Approx(1.5)); // 3 in 2 000 km
    CHECK(found[0].since().times_per_1000km == Approx(4.0));   // 4 in 1 000 km
    CHECK(found[0].last_cleared->entry_id == "k7-2");
    CHECK(found[0].last_seen->entry_id == "k7-3");
}

TEST_CASE(
    "a fault that stays away after clearing and a ride is temporary, without a ride it is only cleared") {
    BikeLog log;
    log.add("2024-03-01", fault("P0120", 1, true), "3000");
    CHECK(histories(log)[0].state == FaultState::cleared);
    CHECK_FALSE(histories(log)[0].since().times_per_1000km);
    log.add("2024-04-01", fault("P0120", 0), "3500");
    const auto found = histories(log);
    CHECK(found[0].state == FaultState::temporary);
    CHECK(found[0].since().times_per_1000km == Approx(0.0));
    CHECK(found[0].last_seen->date == testing::day("2024-03-01"));
}

TEST_CASE("a code that was never cleared is stored: nobody knows yet whether it comes back") {
    BikeLog log;
    log.add("2024-03-01", fault("P0120", std::nullopt), "3000");
    log.add("2024-04-01", fault("P0120", std::nullopt), "3100");
    const auto found = histories(log);
    CHECK(found[0].state == FaultState::stored);
    CHECK(found[0].times() == 2);
    CHECK(found[0].before() == nullptr);
}

TEST_CASE("the bike's counter runs on until it is cleared, so the same figure read twice counts once") {
    BikeLog log;
    log.reading("2024-01-01", "1000");
    log.add("2024-03-01", fault("P0335", 6), "2000");
    log.add("2024-03-10", fault("P0335", 6, true), "2000");
    CHECK(histories(log)[0].times() == 6);
}

TEST_CASE("case and blanks do not make another code, and what is there comes first") {
    BikeLog log;
    log.add("2024-02-01", fault("A1", 1, true), "1000");
    log.add("2024-03-01", fault("p 0335", 1, true), "2000");
    log.add("2024-04-01", fault("P0335", 1), "2500");
    log.add("2024-05-01", fault("X9", 0), "2600");
    const auto found = histories(log);
    REQUIRE(found.size() == 3);
    CHECK(found[0].code == "P0335");
    CHECK(found[0].readings.size() == 2);
    CHECK(found[1].state == FaultState::temporary);
    CHECK(found[2].state == FaultState::absent);
}

TEST_CASE("without an odometer there is no rate, and the state rests on the readings alone") {
    BikeLog log;
    log.add("2024-03-01", fault("P0120", 1, true));
    log.add("2024-04-01", fault("P0120", 2));
    const auto found = histories(log);
    CHECK(found[0].state == FaultState::present);
    CHECK_FALSE(found[0].since().distance);
    CHECK_FALSE(found[0].since().times_per_1000km);
}
