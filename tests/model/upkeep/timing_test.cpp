// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/upkeep/timing.h"

#include "tests/catch.h"
#include "tests/model/bike_log.h"

using namespace sumpbook;
using namespace sumpbook::testing;
using namespace sumpbook::upkeep;

namespace {

Distance whole_km(std::int64_t km) { return Distance::from_whole_km(km); }

NextLimits limits(std::int64_t km, std::string_view date = {}) {
    NextLimits next;
    next.distance = DistanceLimit{whole_km(km), whole_km(km), whole_km(km / 10), {}};
    if (!date.empty()) next.date = DateLimit{day(date), 365, 36.5, 36.5};
    return next;
}

Moment at(std::int64_t km, std::string_view date = "2024-01-01") { return {day(date), whole_km(km), {}}; }

} // namespace

TEST_CASE("A first service planned at 1 000 km") {
    CHECK(timed(limits(1000), at(1090))->timing == Timing::in_window);
    CHECK(timed(limits(1000), at(1100))->timing == Timing::in_window);
    const auto late = timed(limits(1000), at(1110));
    CHECK(late->timing == Timing::late);
    CHECK(late->past_distance == whole_km(110));
    CHECK(timed(limits(1000), at(900))->timing == Timing::in_window);
    const auto early = timed(limits(1000), at(899));
    CHECK(early->timing == Timing::early);
    CHECK(early->past_distance == whole_km(-101));
}

TEST_CASE("Late in any kind is late, early only in every kind") {
    const auto planned = limits(10000, "2024-06-01");
    CHECK(timed(planned, at(5000, "2024-07-08"))->timing == Timing::late);
    CHECK(timed(planned, at(5000, "2024-07-07"))->timing == Timing::in_window); // 36 days past
    CHECK(timed(planned, at(5000, "2024-06-01"))->timing == Timing::in_window);
    CHECK(timed(planned, at(5000, "2024-01-01"))->timing == Timing::early);
    CHECK(timed(planned, at(5000, "2024-01-01"))->past_days == -152);
}

TEST_CASE("Days of the window are real numbers") {
    NextLimits next;
    next.date = DateLimit{day("2024-01-01"), 365, 36.5, 36.5};
    CHECK(timed(next, at(0, "2024-02-06"))->timing == Timing::in_window); // 36 days
    CHECK(timed(next, at(0, "2024-02-07"))->timing == Timing::late);      // 37 days
}

TEST_CASE("Without anything to compare there is no verdict") {
    CHECK_FALSE(timed(limits(1000), Moment{day("2024-01-01"), {}, {}}));
    CHECK_FALSE(timed({}, at(1000)));
}

TEST_CASE("Hours count like the other kinds") {
    NextLimits next;
    next.hours = HoursLimit{100, 100, 10, 10};
    CHECK(timed(next, Moment{{}, {}, 110.0})->timing == Timing::in_window);
    CHECK(timed(next, Moment{{}, {}, 111.0})->timing == Timing::late);
    CHECK(timed(next, Moment{{}, {}, 111.0})->past_hours == Approx(11));
}

TEST_CASE("Verdicts have words") {
    CHECK(words(Timing::early) == "early");
    CHECK(words(Timing::in_window) == "in window");
    CHECK(words(Timing::late) == "late");
}
