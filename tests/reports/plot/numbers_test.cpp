// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/plot/numbers.h"

#include "tests/catch.h"

using namespace sumpbook;
using namespace sumpbook::plot;

TEST_CASE("The numbers of a picture are said in words", "[numbers]") {
    Plot plot{"T", "D", {AxisKind::linear, "Odometer, km"}, {AxisKind::linear, "Iron, ppm"}};
    CHECK(numbers_text(plot).empty());
    plot.series = {{"iron", {{{1000, 8}}, {{3000, 12.5}, {4000, 0.5, true}}}}};
    CHECK(numbers_text(plot) ==
          "iron: 8 at 1 000, 12.5 at 3 000, 0.5 at 4 000 (below detection, drawn at half the limit).");
    plot.x.kind = AxisKind::date;
    const double day = day_position(*parse_iso_date("2026-03-04"));
    plot.series = {{"spent", {{{day, 100}}}}};
    plot.ribbons = {{"to come", {{day, 90, 120}}}};
    CHECK(numbers_text(plot) == "spent: 100 at 4 Mar 2026. to come: 90 to 120 at 4 Mar 2026.");
}

TEST_CASE("Bars and spans are said by their categories", "[numbers]") {
    Plot bars{"T", "D", {AxisKind::category, "", {}, {}, {"2025", "2026"}}, {AxisKind::linear, "EUR"}};
    bars.bars = {{"fuel", {0, 1234.5}}, {"tyres", {90, 0}}};
    CHECK(numbers_text(bars) == "fuel: 1 234.5 in 2026. tyres: 90 in 2025.");
    Plot windows{"T", "D", {AxisKind::date, "Date"}, {AxisKind::category, "", {}, {}, {"oil", "chain"}}};
    const double day = day_position(*parse_iso_date("2026-03-04"));
    windows.spans = {{0, day - 1, day, day + 1, Tone::good, "later"}, {1, day, day, day, Tone::good, ""}};
    CHECK(numbers_text(windows) ==
          "oil: later, 4 Mar 2026, from 3 Mar 2026 to 5 Mar 2026. chain: 4 Mar 2026.");
}

TEST_CASE("Of a long series the beginning and the end are said", "[numbers]") {
    Plot plot{"T", "D", {AxisKind::linear, "x"}, {AxisKind::linear, "y"}};
    plot.series = {{"s", {{}}}};
    for (int i = 0; i < 41; ++i)
        plot.series[0].runs[0].push_back({1.0 * i, 2.0 * i});
    const std::string text = numbers_text(plot);
    CHECK(text.find("28 at 14, 11 more between, 52 at 26") != std::string::npos);
    CHECK(text.ends_with("80 at 40."));
}
