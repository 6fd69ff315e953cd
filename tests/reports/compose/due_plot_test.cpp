// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/due_plot.h"

#include "reports/plot/faults.h"
#include "tests/catch.h"
#include "tests/model/bike_log.h"

using namespace sumpbook;
using namespace sumpbook::testing;
using upkeep::DueItem;
using upkeep::DueState;

namespace {

DueItem item(std::string bike, std::string label, DueState state) {
    DueItem due;
    due.bike = std::move(bike);
    due.label = std::move(label);
    due.state = state;
    return due;
}

DueItem with_days(DueItem due, std::string_view p10, std::string_view p50, std::string_view p90) {
    due.date_p10 = day(p10);
    due.date_p50 = day(p50);
    due.date_p90 = day(p90);
    return due;
}

} // namespace

TEST_CASE("Each item is a stretch with its middle, its state beside it, and a line at today") {
    const auto picture = compose::due_plot(
        {with_days(item("Tourer", "Brake fluid", DueState::overdue), "2025-01-01", "2025-01-01",
                   "2025-01-01"),
         with_days(item("Tourer", "Engine oil", DueState::later), "2025-06-01", "2025-07-15", "2025-09-30")},
        day("2025-02-01"));
    CHECK(picture.x.kind == plot::AxisKind::date);
    CHECK(picture.y.kind == plot::AxisKind::category);
    CHECK(picture.y.categories == std::vector<std::string>{"Brake fluid", "Engine oil"});
    REQUIRE(picture.spans.size() == 2);
    CHECK(picture.spans[0].tone == plot::Tone::danger);
    CHECK(picture.spans[0].note == "overdue");
    CHECK(picture.spans[0].from == picture.spans[0].to);
    const auto& oil = picture.spans[1];
    CHECK(oil.category == 1);
    CHECK(plot::day_at(oil.from) == day("2025-06-01"));
    CHECK(plot::day_at(oil.middle) == day("2025-07-15"));
    CHECK(plot::day_at(oil.to) == day("2025-09-30"));
    CHECK(oil.tone == plot::Tone::good);
    REQUIRE(picture.rules.size() == 1);
    CHECK(picture.rules[0].vertical);
    CHECK(picture.rules[0].label == "today");
    CHECK(plot::day_at(picture.rules[0].at) == day("2025-02-01"));
    CHECK_FALSE(plot::empty(picture));
    CHECK(picture.title == "What falls due on Tourer, and when");
    CHECK(picture.x.title == "Day it falls due");
    CHECK_FALSE(picture.x.from); // the oldest is a month old
    CHECK(plot::faults(picture) == std::vector<std::string>{});
}

TEST_CASE("What was due long ago stands at the edge, with its month in words") {
    const auto picture = compose::due_plot(
        {with_days(item("Tourer", "Fork oil", DueState::overdue), "2022-06-17", "2022-06-17", "2022-06-17"),
         with_days(item("Old twin", "Chain", DueState::soon), "2025-03-01", "2025-04-01", "2025-05-01")},
        day("2025-02-01"));
    CHECK(picture.title == "What falls due on 2 bikes, and when");
    CHECK(picture.spans[0].note == "overdue");
    CHECK(picture.spans[0].more == "since Jun 2022");
    CHECK(picture.spans[1].more.empty());
    CHECK(picture.spans[1].note == "soon");
    REQUIRE(picture.x.from);
    CHECK(plot::day_at(*picture.x.from) == day("2024-08-01"));
    CHECK(plot::faults(picture) == std::vector<std::string>{});
}

TEST_CASE("Items without a day are named, not drawn; with several bikes each has its bike") {
    auto open_ended =
        with_days(item("Tourer", "Chain", DueState::soon), "2025-03-01", "2025-04-01", "2025-05-01");
    open_ended.date_p90.reset();
    const auto picture =
        compose::due_plot({open_ended, item("Old twin", "Engine oil", DueState::unknown)}, day("2025-02-01"));
    CHECK(picture.y.categories == std::vector<std::string>{"Tourer: Chain"});
    REQUIRE(picture.spans.size() == 1);
    CHECK(picture.spans[0].to == picture.spans[0].middle);
    CHECK(picture.spans[0].tone == plot::Tone::caution);
    CHECK(picture.description.find("Without a day: Old twin: Engine oil.") != std::string::npos);
    CHECK(compose::due_plot({}, day("2025-02-01")).spans.empty());
}
