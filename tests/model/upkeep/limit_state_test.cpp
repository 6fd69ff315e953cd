// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/upkeep/limit_state.h"

#include "tests/catch.h"
#include "tests/model/bike_log.h"

using namespace sumpbook;
using namespace sumpbook::testing;
using namespace sumpbook::upkeep;

namespace {

Distance whole_km(std::int64_t km) { return Distance::from_whole_km(km); }

DueState at_km(std::int64_t km, std::optional<Date> expected = {}) {
    NextLimits limits;
    limits.distance = DistanceLimit{whole_km(10000), whole_km(6000), whole_km(600), whole_km(600)};
    return worst(limit_states(limits, Moment{day("2024-06-01"), whole_km(km), {}}, expected))->state;
}

DueState on(std::string_view date, double window_days) {
    NextLimits limits;
    limits.date = DateLimit{day("2024-06-01"), 365, window_days, 36.5};
    return worst(limit_states(limits, Moment{day(date), {}, {}}, {}))->state;
}

} // namespace

TEST_CASE("Reaching the limit is due, the end of the window still is, past it is overdue") {
    CHECK(at_km(9399) == DueState::later);
    CHECK(at_km(9400) == DueState::soon);
    CHECK(at_km(9999) == DueState::soon);
    CHECK(at_km(10000) == DueState::due);
    CHECK(at_km(10600) == DueState::due);
    CHECK(at_km(10601) == DueState::overdue);
}

TEST_CASE("A distance expected within 30 days is soon") {
    CHECK(at_km(5000, day("2024-07-01")) == DueState::soon);
    CHECK(at_km(5000, day("2024-07-02")) == DueState::later);
}

TEST_CASE("Without a window the day after the limit is overdue") {
    CHECK(on("2024-05-31", 0) == DueState::soon);
    CHECK(on("2024-06-01", 0) == DueState::due);
    CHECK(on("2024-06-02", 0) == DueState::overdue);
    CHECK(on("2024-07-07", 36.5) == DueState::due);
    CHECK(on("2024-07-08", 36.5) == DueState::overdue);
    CHECK(on("2024-04-26", 36.5) == DueState::soon);
    CHECK(on("2024-04-25", 36.5) == DueState::later);
}

TEST_CASE("The worst limit decides, and what cannot be compared is left out") {
    NextLimits limits;
    limits.distance = DistanceLimit{whole_km(10000), whole_km(6000), whole_km(600), whole_km(600)};
    limits.date = DateLimit{day("2024-06-01"), 365, 36.5, 36.5};
    const auto both = worst(limit_states(limits, Moment{day("2024-06-01"), whole_km(2000), {}}, {}));
    CHECK(both->kind == LimitKind::date);
    CHECK(both->state == DueState::due);
    CHECK(limit_states(limits, Moment{day("2024-06-01"), {}, {}}, {}).size() == 1);
    CHECK_FALSE(worst(limit_states({}, Moment{day("2024-06-01"), {}, {}}, {})));
}

TEST_CASE("States are listed overdue, due, unknown, soon, later") {
    CHECK(DueState::overdue < DueState::due);
    CHECK(DueState::due < DueState::unknown);
    CHECK(DueState::unknown < DueState::soon);
    CHECK(DueState::soon < DueState::later);
    CHECK(slug(DueState::overdue) == "overdue");
    CHECK(slug(DueState::later) == "later");
}
