// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/plan_fields.h"

#include "tests/catch.h"
#include "tests/model/bike_log.h"

using namespace sumpbook;
using namespace sumpbook::testing;
using namespace sumpbook::cli;

namespace {

TypedAs as() {
    TypedAs typed;
    typed.mark = DecimalMark::point;
    typed.order = DateOrder::day_month_year;
    typed.currency = Currency::from_code("EUR").value();
    typed.today = day("2024-06-01");
    return typed;
}

} // namespace

TEST_CASE("Limits of several kinds stand in one text") {
    const auto limits = typed_limits("--every", "6000 km or 12 months or 100 h", as());
    REQUIRE(limits);
    CHECK(limits->distance == km("6000"));
    CHECK(limits->months == 12);
    CHECK(limits->hours == number("100"));
    CHECK(typed_limits("--every", "2 years", as())->months == 24);
    CHECK(typed_limits("--every", "4000 mi", as())->distance == miles("4000"));
    CHECK(typed_limits("--every", "6000", as())->distance == km("6000"));
    CHECK_FALSE(typed_limits("--every", "none", as())->any());
}

TEST_CASE("An interval that cannot be read is refused by its option and its text") {
    for (const auto* text : {"6000 moons", "0 km", "1.5 months", "-3 months", "101 years"}) {
        INFO(text);
        const auto limits = typed_limits("--every", text, as());
        REQUIRE_FALSE(limits);
        CHECK(limits.error().place.column == "--every");
        CHECK_FALSE(limits.error().place.text.empty());
    }
}

TEST_CASE("Windows and leads count days, distance and hours") {
    const auto margin = typed_margin("--window", "500 km or 14 days or 5 h", as());
    REQUIRE(margin);
    REQUIRE(*margin);
    CHECK((*margin)->distance == km("500"));
    CHECK((*margin)->days == 14);
    CHECK((*margin)->hours == number("5"));
    CHECK_FALSE(*typed_margin("--window", "none", as()));
    CHECK_FALSE(typed_margin("--window", "1.5 days", as()));
}

TEST_CASE("Only what was typed is changed") {
    PlanItem item;
    item.slug = "engine-oil";
    item.label = "Engine oil";
    item.repeat = {km("6000"), 12, {}};
    item.estimate = money("99.00");
    REQUIRE(
        set_plan_fields(item, {{"--cost", "120"}, {"--counted-from", "grid"}, {"--kind", "safety"}}, as()));
    CHECK(item.estimate == money("120.00"));
    CHECK(item.counted_from == CountedFrom::grid);
    CHECK(item.kind == PlanKind::safety);
    CHECK(item.repeat == Limits{km("6000"), 12, {}});
    REQUIRE(set_plan_fields(item, {{"--includes", "oil-filter, air-filter"}, {"--cost", "none"}}, as()));
    CHECK(item.includes == std::vector<std::string>{"oil-filter", "air-filter"});
    CHECK_FALSE(item.estimate);
    REQUIRE(set_plan_fields(item, {{"--in-force-from", "2025-01-01"}, {"--done-by", "workshop"}}, as()));
    CHECK(item.in_force_from == day("2025-01-01"));
    CHECK(item.done_by == DoneBy::workshop);
    CHECK_FALSE(set_plan_fields(item, {{"--kind", "whatever"}}, as()));
}

TEST_CASE("Limits and lists may be given piece by piece, other options once") {
    CLI::App command;
    TypedPlanFields typed;
    add_plan_options(command, typed);
    command.parse("--every 6000km --every 12months --includes oil-filter --includes air-filter");
    CHECK(typed["--every"] == "6000km or 12months");
    PlanItem item;
    REQUIRE(set_plan_fields(item, typed, as()));
    CHECK(item.repeat == Limits{km("6000"), 12, {}});
    CHECK(item.includes == std::vector<std::string>{"oil-filter", "air-filter"});
    CLI::App again;
    add_plan_options(again, typed);
    CHECK_THROWS_AS(again.parse("--label One --label Two"), CLI::ParseError);
}
