// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/report_due.h"

#include "model/upkeep/due.h"
#include "reports/plot/plot.h"
#include "reports/write/text.h"
#include "tests/catch.h"
#include "tests/model/bike_log.h"

using namespace sumpbook;
using namespace sumpbook::testing;

namespace {

/// 10 km a day; oil due at 7 000 km or on 11 Apr 2024; nobody knows about the valves.
BikeLog ridden() {
    BikeLog log;
    log.bike.details.value.in_service_date = day("2023-01-01");
    log.reading("2023-01-01", "0");
    auto& oil = log.plan("engine-oil");
    oil.label = "Engine oil";
    oil.repeat.distance = km("6000");
    oil.repeat.months = 12;
    log.work("2023-04-11", "1000", {"engine-oil"});
    log.reading("2023-07-20", "2000");
    return log;
}

document::Document report(const BikeLog& log, std::string_view today,
                          const compose::Pictures& pictures = {}) {
    const compose::ReportFront front{.bikes = {"Tourer"},
                                     .as_of = day(today),
                                     .garage_file = "my.sumpbook",
                                     .fingerprint = "7k2mf",
                                     .records = 4};
    return compose::report_due(front, upkeep::due_items({&log.bike}, day(today)), pictures);
}

std::string text_of(const document::Document& document) {
    return write::text(document, {.width = 200, .colour = false});
}
bool holds(const std::string& text, std::string_view part) { return text.find(part) != std::string::npos; }

} // namespace

TEST_CASE("What has reached its limit stands under Do now, worst first", "[compose][report]") {
    const auto text = text_of(report(ridden(), "2024-12-01"));
    CHECK(holds(text, "What falls due: Tourer"));
    CHECK(holds(text, "Overdue: 1. Due, still inside the window: 0."));
    CHECK(holds(text, "Do now\n------\n■ overdue: Engine oil. The limit is 11 Apr 2024"));
    CHECK_FALSE(holds(text, "Soon\n----"));
    CHECK(holds(text, "About this report"));
}

TEST_CASE("What nobody can say is told as such, in sentences", "[compose][report]") {
    auto log = ridden();
    log.bike.details.value.in_service_date.reset();
    auto& fluid = log.plan("brake-fluid");
    fluid.label = "Brake fluid";
    fluid.repeat.months = 24;
    const auto text = text_of(report(log, "2023-07-20"));
    CHECK(holds(text, "Not known when: 1, see below."));
    CHECK(holds(text, "unknown: Brake fluid. Nothing to count from. Say when"));
}

TEST_CASE("Where nothing has reached its limit the report says so, and has no list of what to do now",
          "[compose][report]") {
    const auto text = text_of(report(ridden(), "2023-07-20"));
    CHECK(holds(text, "Nothing that is planned has reached its limit."));
    CHECK_FALSE(holds(text, "Do now"));
}

TEST_CASE("Without a plan the report says how to begin one", "[compose][report]") {
    CHECK(holds(text_of(report(BikeLog{}, "2023-07-20")), "Nothing is planned yet."));
}

TEST_CASE("Pictures with nothing to see are left out", "[compose][report]") {
    plot::Plot windows;
    windows.title = "Windows";
    windows.description = "When it comes.";
    windows.y = {plot::AxisKind::category, "", {}, {}, {"Engine oil"}};
    const auto hollow = std::make_shared<const plot::Plot>(windows);
    windows.spans.push_back({0, 1, 2, 3, plot::Tone::good, ""});
    const auto full = std::make_shared<const plot::Plot>(windows);
    const auto document = report(ridden(), "2023-07-20", {hollow, full, nullptr});
    std::size_t figures = 0;
    for (const auto& block : document.blocks)
        figures += std::holds_alternative<document::Figure>(block) ? 1U : 0U;
    CHECK(figures == 1);
}
