// SPDX-License-Identifier: GPL-3.0-or-later
// Limits of parts that wear, against published figures; sources stand in the tables.
#include "model/upkeep/starter.h"
#include "model/upkeep/wear_limits.h"

#include "tests/catch.h"
#include "tests/model/bike_log.h"
#include "tests/outside/check_table.h"
#include "tests/outside/numbers.h"

#include <algorithm>

using namespace sumpbook;
using namespace sumpbook::outside;
using namespace sumpbook::upkeep;
using sumpbook::testing::BikeLog;
using sumpbook::testing::day;

namespace {

/// The state of a part measured once, without a limit of the owner's; absent: nothing to say yet.
std::optional<DueState> measured(const std::string& quantity, const std::string& unit, double value) {
    BikeLog log;
    log.add("2024-05-01", Measure{quantity, decimal_from_double(value, 4), unit, "front", {}}, "10000");
    const auto items = wear_limits(BikeToday(log.bike, day("2024-05-01")));
    return items.empty() ? std::nullopt : std::optional(items.at(0).state);
}

} // namespace

TEST_CASE("A brake pad is worn out at the published least thickness", "[outside][wear]") {
    const CheckRow& row = check_row("std-brakes.csv", "pad or lining minimum, UK motorcycle test, bonded");
    TESTING_ROW(row);
    CHECK(measured("pad", "mm", row.number("value")) == DueState::due);
    CHECK_FALSE(measured("pad", "mm", row.number("value") + 0.01));
}

TEST_CASE("Brake fluid is planned at the published interval", "[outside][wear]") {
    const CheckRow& row = check_row("std-brakes.csv", "brake fluid change"); // common practice
    TESTING_ROW(row);
    const auto plan = starter_plan({}, std::nullopt, std::nullopt);
    const auto fluid = std::ranges::find(plan, "brake-fluid", &PlanItem::slug);
    REQUIRE(fluid != plan.end());
    CHECK(fluid->repeat.months == static_cast<int>(row.number("value")));
}

TEST_CASE("A tread is worn out at the deepest published limit, so that none is missed", "[outside][wear]") {
    double deepest = 0;
    for (const CheckRow& row : check_table("std-tread-min.csv")) {
        if (row["min_mm"] == "visible") continue; // in the list of skipped rows
        TESTING_ROW(row);
        CHECK(measured("tread", "mm", row.number("min_mm")).has_value());
        deepest = std::max(deepest, row.number("min_mm"));
    }
    CHECK(measured("tread", "mm", deepest) == DueState::due);
    CHECK_FALSE(measured("tread", "mm", deepest + 0.01));
}

TEST_CASE("A chain is worn out within the published limits", "[outside][wear]") {
    const CheckRow& general = check_row("std-chain.csv", "roller chain replace limit, general");
    const CheckRow& practice = check_row("std-chain.csv", "motorcycle practice"); // common practice
    TESTING_ROW(general);
    TESTING_ROW(practice);
    const auto figures = numbers_in(practice["value"]); // 1.5 to 2.5; many replace at 2
    REQUIRE(figures.size() == 3);
    CHECK(measured("chain", "%", general.number("value")).has_value());
    CHECK(measured("chain", "%", figures[2]) == DueState::due);
    CHECK_FALSE(measured("chain", "%", figures[2] - 0.01));
}
