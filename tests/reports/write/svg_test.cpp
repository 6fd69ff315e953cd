// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/write/svg.h"

#include "reports/plot/layout.h"
#include "tests/catch.h"
#include "tests/reports/write/xml_check.h"

#include <algorithm>
#include <limits>
#include <set>

using namespace sumpbook;
using namespace sumpbook::plot;
using write::testing::read_markup;

namespace {

std::size_t count(const std::string& text, std::string_view part) {
    std::size_t found = 0;
    for (auto at = text.find(part); at != std::string::npos; at = text.find(part, at + 1))
        ++found;
    return found;
}

Plot with_axes() {
    Plot plot;
    plot.title = "Wear metals";
    plot.description = "Iron and copper over four samples.";
    plot.x.kind = AxisKind::date;
    plot.x.title = "Day drawn";
    plot.y.title = "mg/kg";
    return plot;
}

/// Iron in two runs, copper below detection once, and every kind of thing that lies along a day axis.
Plot along_days() {
    auto plot = with_axes();
    const double first = day_position(parse_iso_date("2024-03-01").value());
    plot.series.push_back({"iron",
                           {{{first, 12, false}, {first + 200, 20, false}}, {{first + 400, 15, false}}},
                           Tone::first,
                           Stroke::solid,
                           Mark::square});
    plot.series.push_back({"copper",
                           {{{first, 1, true}, {first + 200, 4, false}}},
                           Tone::second,
                           Stroke::dashed,
                           Mark::triangle});
    plot.bands.push_back({"watch", 16, 20, Tone::caution});
    plot.rules.push_back({"limit", 20, false, Tone::danger, Stroke::dashed});
    plot.rules.push_back({"oil change", first + 300, true, Tone::muted, Stroke::dotted});
    plot.ribbons.push_back({"10 to 90 %", {{first + 400, 10, 20}, {first + 500, 12, 30}}, Tone::fourth});
    return plot;
}

} // namespace

TEST_CASE("A picture is well-formed and says what it shows") {
    const auto picture = write::svg(along_days(), "picture-1");
    const auto read = read_markup(picture);
    CHECK(read.fault.empty());
    CHECK(picture.find("role=\"img\" aria-labelledby=\"picture-1-title picture-1-desc\"") !=
          std::string::npos);
    CHECK(picture.find("<title id=\"picture-1-title\">Wear metals</title>") != std::string::npos);
    CHECK(picture.find("<desc id=\"picture-1-desc\">Iron and copper over four samples.</desc>") !=
          std::string::npos);
}

TEST_CASE("Ids are unique in a picture and told apart between pictures") {
    Plot bars = with_axes();
    bars.x = {AxisKind::category, "", {}, {}, {"2024", "2025"}};
    bars.bars.push_back({"fuel", {10, 20}, Tone::second});
    auto ids = read_markup(write::svg(bars, "picture-1")).ids;
    const auto others = read_markup(write::svg(bars, "picture-2")).ids;
    ids.insert(ids.end(), others.begin(), others.end());
    REQUIRE(ids.size() > 4);
    CHECK(std::set<std::string>(ids.begin(), ids.end()).size() == ids.size());
}

TEST_CASE("Every point has its mark, runs are not joined, below detection is hollow") {
    const auto plot = along_days();
    const auto keys = lay_out(plot, {760, good_height(plot, 760)}).keys.size();
    REQUIRE(keys > 0);
    const auto picture = write::svg(plot, "p");
    CHECK(count(picture, "<polyline") == 2); // the run of one point has no line
    CHECK(count(picture, "line-second paper\"") >= 1);
    CHECK(count(picture, "line-second fill-second\"") >= 1);
    CHECK(count(picture, "stroke-dasharray=\"7 4\"") >= 2); // copper and the limit
    CHECK(count(picture, "class=\"band-caution\"") == 1);
    CHECK(count(picture, "class=\"ribbon-fourth") >= 1);
}

TEST_CASE("Every word that has room in the picture is written") {
    const auto plot = along_days();
    const auto layout = lay_out(plot, {760, good_height(plot, 760)});
    const auto text = read_markup(write::svg(plot, "p")).text;
    CHECK(layout.dropped.empty());
    for (const auto* word :
         {"Wear metals", "mg/kg", "iron", "copper", "watch", "limit", "oil change", "10 to 90 %"}) {
        INFO(word);
        CHECK(text.find(word) != std::string::npos);
    }
}

TEST_CASE("Bars are hatched so that grey tells them apart, spans have their middle marked") {
    Plot bars = with_axes();
    bars.x = {AxisKind::category, "", {}, {}, {"2024", "2025"}};
    bars.bars.push_back({"fuel", {10, 20}, Tone::first});
    bars.bars.push_back({"tyres", {0, 5}, Tone::second});
    const auto picture = write::svg(bars, "p");
    CHECK(count(picture, "fill=\"url(#p-rising)\"") >= 1);
    CHECK(picture.find("<pattern id=\"p-rising\"") != std::string::npos);
    Plot spans = with_axes();
    spans.y = {AxisKind::category, "", {}, {}, {"Engine oil", "Chain"}};
    const double day = day_position(parse_iso_date("2026-03-01").value());
    spans.spans.push_back({0, day, day + 20, day + 40, Tone::danger, "overdue"});
    spans.spans.push_back({1, day + 50, day + 80, day + 120, Tone::good, ""});
    const auto windows = write::svg(spans, "p");
    CHECK(count(windows, "class=\"ribbon-danger line-danger\"") == 1);
    CHECK(read_markup(windows).text.find("overdue") != std::string::npos);
    CHECK(read_markup(windows).fault.empty());
}

TEST_CASE("Numbers that are none leave no trace in the picture") {
    auto plot = along_days();
    plot.series[0].runs[0].push_back({std::numeric_limits<double>::quiet_NaN(), 3, false});
    plot.series[0].runs[0].push_back({1, std::numeric_limits<double>::infinity(), false});
    const auto picture = write::svg(plot, "p");
    CHECK(picture.find("nan") == std::string::npos);
    CHECK(picture.find("inf") == std::string::npos);
    CHECK(read_markup(picture).fault.empty());
}

TEST_CASE("Colours are named for light and dark ground, and stand in a file of its own") {
    const auto css = write::svg_style();
    CHECK(css.find_first_of("<&") == std::string::npos);
    CHECK(count(css, ".plot .line-danger {") == 2);
    CHECK(css.find("prefers-color-scheme: dark") != std::string::npos);
    const auto file = write::svg_file(along_days());
    CHECK(read_markup(file).fault.empty());
    CHECK(file.starts_with("<svg xmlns=\"http://www.w3.org/2000/svg\""));
}
