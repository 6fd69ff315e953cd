// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/review/fasteners.h"

#include "tests/catch.h"
#include "tests/model/bike_log.h"

using namespace sumpbook;
using namespace sumpbook::review;
using namespace sumpbook::testing;

namespace {

Work tightened(std::string fastener, std::string_view nm, std::optional<bool> painted = {}) {
    Work work;
    work.torques.push_back({std::move(fastener), {number(nm), TorqueUnit::nm}, painted});
    return work;
}

Work looked_at(std::string fastener, bool aligned) {
    Work work;
    work.paint_marks_seen.push_back({std::move(fastener), aligned});
    return work;
}

} // namespace

TEST_CASE("a mark is followed from the job that drew it to the last look at it") {
    BikeLog log;
    const auto drawn = log.add("2024-03-01", tightened("axle nut", "98", true));
    CHECK(fasteners_of(log.bike, drawn)[0].mark == PaintMark::drawn);
    log.add("2024-04-01", looked_at("Axle nut", true));
    CHECK(fasteners_of(log.bike, drawn)[0].mark == PaintMark::aligned);
    log.add("2024-05-01", looked_at("axle nut", false));
    const auto moved = fasteners_of(log.bike, drawn)[0];
    CHECK(moved.mark == PaintMark::moved);
    CHECK(moved.looked_at == FastenerEvent{"k7-3", day("2024-05-01")});
    CHECK_FALSE(moved.redone);
}

TEST_CASE("what comes after the fastener was tightened again is of the later job") {
    BikeLog log;
    const auto first = log.add("2024-03-01", tightened("axle nut", "98", true));
    const auto second = log.add("2024-04-01", tightened("axle nut", "98"));
    log.add("2024-05-01", looked_at("axle nut", false));
    CHECK(fasteners_of(log.bike, first)[0].mark == PaintMark::drawn);
    CHECK(fasteners_of(log.bike, first)[0].redone->entry_id == "k7-2");
    CHECK(fasteners_of(log.bike, second)[0].mark == PaintMark::moved);
}

TEST_CASE("a look at a mark names the job that drew it and the one that redid it") {
    BikeLog log;
    log.add("2024-03-01", tightened("axle nut", "98", true));
    const auto look = log.add("2024-04-01", looked_at("axle nut", false));
    auto seen = marks_seen_in(log.bike, look);
    REQUIRE(seen.size() == 1);
    CHECK(seen[0].drawn->entry_id == "k7-1");
    CHECK_FALSE(seen[0].redone);
    log.add("2024-04-02", tightened("axle nut", "98", true));
    CHECK(marks_seen_in(log.bike, look)[0].redone->entry_id == "k7-3");
}

TEST_CASE("the thread is read from a word of the fastener's name") {
    CHECK(thread_in("M8 cover bolt") == "M8");
    CHECK(thread_in("cover bolt (M10x1.25)") == "M10x1.25");
    CHECK(thread_in("caliper bolt m8") == "m8");
    CHECK_FALSE(thread_in("oil drain plug"));
    CHECK_FALSE(thread_in("M"));
    CHECK_FALSE(thread_in("main stand bolt"));
}

TEST_CASE("a torque is judged only where the thread is known") {
    BikeLog log;
    const auto job = log.add("2024-03-01", tightened("M8 bolt", "240"));
    CHECK(fasteners_of(log.bike, job)[0].plausibility == TorquePlausibility::too_high);
    const auto other = log.add("2024-03-02", tightened("axle nut", "240"));
    CHECK(fasteners_of(log.bike, other)[0].plausibility == TorquePlausibility::unknown_thread);
    CHECK(fasteners_of(log.bike, log.reading("2024-03-03", "10")).empty());
}
