// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/upkeep/open_recalls.h"

#include "tests/catch.h"
#include "tests/model/bike_log.h"

using namespace sumpbook;
using namespace sumpbook::testing;
using namespace sumpbook::upkeep;

namespace {

Recall recall(Applies applies, bool done) {
    Recall made;
    made.number = "R-17";
    made.applies = applies;
    made.done = done;
    return made;
}

std::vector<DueItem> on(const BikeLog& log, std::string_view today) {
    return open_recalls(BikeToday(log.bike, day(today)));
}

} // namespace

TEST_CASE("An open recall is due until it is done") {
    BikeLog log;
    log.add("2024-01-01", recall(Applies::yes, false));
    REQUIRE(on(log, "2024-02-01").size() == 1);
    CHECK(on(log, "2024-02-01")[0].state == DueState::due);
    CHECK(on(log, "2024-02-01")[0].label == "Recall R-17");
    log.add("2024-03-01", recall(Applies::yes, true));
    CHECK(on(log, "2024-03-01").empty());
    CHECK(on(log, "2024-02-01").size() == 1);
}

TEST_CASE("One that may not apply is unknown, one that does not is not listed") {
    BikeLog log;
    log.add("2024-01-01", recall(Applies::unknown, false));
    CHECK(on(log, "2024-02-01")[0].state == DueState::unknown);
    CHECK(on(log, "2024-02-01")[0].unknown_because == UnknownBecause::not_looked_up);
    log.add("2024-01-02", recall(Applies::no, false));
    CHECK(on(log, "2024-02-01").empty());
}

TEST_CASE("A recurring one is due on its next day and overdue the day after") {
    BikeLog log;
    auto again = recall(Applies::yes, true);
    again.recurring = true;
    again.next_due = day("2025-01-01");
    log.add("2024-01-01", again);
    CHECK(on(log, "2024-06-01")[0].state == DueState::later);
    CHECK(on(log, "2024-12-10")[0].state == DueState::soon);
    CHECK(on(log, "2025-01-01")[0].state == DueState::due);
    CHECK(on(log, "2025-01-02")[0].state == DueState::overdue);
    CHECK(on(log, "2025-01-02")[0].history.size() == 1);
}
