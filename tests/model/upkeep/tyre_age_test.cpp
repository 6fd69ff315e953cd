// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/upkeep/tyre_age.h"

#include "tests/catch.h"
#include "tests/model/bike_log.h"

using namespace sumpbook;
using namespace sumpbook::testing;
using namespace sumpbook::upkeep;

namespace {

Fit tyre(std::string slot, std::optional<std::string> code) {
    Fit fit;
    fit.slot = std::move(slot);
    fit.tyre_date_code = std::move(code);
    return fit;
}

std::vector<DueItem> on(const BikeLog& log, std::string_view today) {
    return tyre_ages(BikeToday(log.bike, day(today)));
}

} // namespace

TEST_CASE("A tyre is soon from nine years of age and due at ten, by its date code") {
    BikeLog log;
    log.add("2016-05-01", tyre("front-tyre", "0115"), "1000"); // week from Sunday 4 January 2015
    CHECK(on(log, "2024-01-03")[0].state == DueState::later);
    CHECK(on(log, "2024-01-05")[0].state == DueState::soon);
    CHECK(on(log, "2025-01-04")[0].state == DueState::due);
    CHECK(on(log, "2025-01-05")[0].state == DueState::overdue);
    CHECK(on(log, "2025-01-05")[0].slug == "front-tyre-age");
}

TEST_CASE("Only the tyre fitted last counts, and only with a code that can be read") {
    BikeLog log;
    log.add("2016-05-01", tyre("rear-tyre", "0115"));
    log.add("2020-05-01", tyre("rear-tyre", "0120"));
    REQUIRE(on(log, "2021-01-01").size() == 1);
    CHECK(on(log, "2021-01-01")[0].limits.date->at == day("2030-01-05"));
    log.add("2022-05-01", tyre("rear-tyre", std::nullopt));
    CHECK(on(log, "2023-01-01").empty());
}
