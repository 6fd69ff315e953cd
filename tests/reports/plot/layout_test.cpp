// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/plot/layout.h"

#include "reports/plot/faults.h"
#include "reports/plot/legend.h"
#include "reports/plot/thin.h"
#include "tests/catch.h"
#include "tests/reports/render/gallery.h"

#include <cmath>
#include <limits>

using namespace sumpbook;
using namespace sumpbook::plot;

namespace {

Plot line_of(std::size_t points) {
    Plot plot{"T", "D", {AxisKind::linear, "x, km"}, {AxisKind::linear, "y, ppm"}};
    plot.series = {{"s", {{}}}};
    for (std::size_t i = 0; i < points; ++i)
        plot.series[0].runs[0].push_back({static_cast<double>(i), 10 + std::sin(static_cast<double>(i))});
    return plot;
}

} // namespace

TEST_CASE("Every picture of the gallery is sound at every usual size", "[layout]") {
    for (const auto& [name, picture] : gallery::pictures())
        for (const double width : {480.0, 640.0, 720.0, 1000.0, 1600.0}) {
            CAPTURE(name, width);
            CHECK(faults(picture, {width, good_height(picture, width)}) == std::vector<std::string>{});
        }
}

TEST_CASE("Data has its place within the area", "[layout]") {
    for (const auto& [name, picture] : gallery::pictures()) {
        const Layout layout = lay_out(picture, {720, 405});
        CAPTURE(name);
        for (const Series& series : picture.series)
            for (const auto& run : series.runs)
                for (const Point& point : run) {
                    const double x = layout.x.px(point.x).value();
                    const double y = layout.y.px(point.y).value();
                    REQUIRE((x >= layout.area.left + 3 && x <= layout.area.right() - 3));
                    REQUIRE((y >= layout.area.top + 3 && y <= layout.area.bottom() - 3));
                }
        for (const BarBox& bar : layout.bars)
            CHECK(bar.box.within(layout.area));
        for (const SpanBox& span : layout.spans)
            CHECK(span.box.within(layout.area));
    }
}

TEST_CASE("Bars stand on each other, as high as their values", "[layout]") {
    Plot plot{"T", "D", {AxisKind::category, "", {}, {}, {"a"}}, {AxisKind::linear, "EUR"}};
    plot.bars = {{"one", {100}}, {"none", {0}}, {"two", {300}}};
    const Layout layout = lay_out(plot, {640, 360});
    REQUIRE(layout.bars.size() == 2);
    CHECK(layout.bars[0].box.bottom() == Approx(layout.y.px(0).value()));
    CHECK(layout.bars[0].box.top == Approx(layout.y.px(100).value()));
    CHECK(layout.bars[1].box.bottom() == Approx(layout.y.px(100).value()));
    CHECK(layout.bars[1].box.top == Approx(layout.y.px(400).value()));
    CHECK(layout.bars[1].box.height == Approx(3 * layout.bars[0].box.height));
}

TEST_CASE("Few bars are no wider than many would be allowed to be", "[layout]") {
    Plot plot{"T", "D", {AxisKind::category, "", {}, {}, {"2026"}}, {AxisKind::linear, "EUR"}};
    plot.bars = {{"fuel", {100}}};
    const Layout one = lay_out(plot, {900, 506});
    REQUIRE(one.bars.size() == 1);
    CHECK(one.bars[0].box.width == Approx(most_bar_px));
    CHECK(one.bars[0].box.width == Approx(one.bar_share * one.area.width));
    CHECK(one.bars[0].box.middle() == Approx(one.area.middle()));
    for (int year = 2006; year < 2026; ++year) {
        plot.x.categories.push_back(std::to_string(year));
        plot.bars[0].values.push_back(50);
    }
    const Layout many = lay_out(plot, {900, 506});
    CHECK(many.bar_share == Approx(most_bar_share));
    CHECK(many.bars[0].box.width < most_bar_px);
}

namespace {

Plot windows(int lines) {
    Plot plot{"T", "D", {AxisKind::date, "Day"}, {AxisKind::category, ""}};
    for (int i = 0; i < lines; ++i) {
        plot.y.categories.push_back("job " + std::to_string(i));
        plot.spans.push_back({static_cast<std::size_t>(i), 20000.0 + i, 20010.0 + i, 20050, Tone::good, ""});
    }
    plot.rules = {{"today", 20005, true}};
    plot.span_label = "8 of 10 cases";
    plot.middle_label = "even chances";
    return plot;
}

std::size_t day_rows(const Layout& layout) {
    std::vector<double> rows;
    for (const Label& label : layout.labels)
        if (label.role == Role::x_tick) rows.push_back(label.box.top);
    std::ranges::sort(rows);
    rows.erase(std::unique(rows.begin(), rows.end()), rows.end());
    return rows.size();
}

} // namespace

TEST_CASE("The days of a long list are written above it as well", "[layout]") {
    for (const int lines : {5, 17, 18, 30})
        for (const double line_px : {usual_line_px, least_line_px}) {
            const Plot plot = windows(lines);
            const Size size{620, good_height(plot, 620, line_px)};
            CAPTURE(lines, line_px);
            CHECK(faults(plot, size) == std::vector<std::string>{});
            const Layout layout = lay_out(plot, size);
            CHECK(day_rows(layout) == (lines < 18 ? 1U : 2U));
            CHECK(layout.area.height / lines == Approx(line_px).margin(1));
        }
}

TEST_CASE("What lies before the axis begins is drawn at its edge with an arrow", "[layout]") {
    Plot plot = windows(2);
    plot.x.from = 20011;
    const Layout layout = lay_out(plot, {640, 200});
    REQUIRE(layout.spans.size() == 2);
    CHECK(layout.spans[0].before);
    CHECK_FALSE(layout.spans[1].before);
    CHECK(layout.spans[0].middle < layout.area.left + 20);
    for (const auto& [x, y] : layout.spans[0].arrow()) {
        CHECK((x > layout.area.left && x < layout.spans[0].middle));
        CHECK(std::abs(y - layout.spans[0].box.centre()) < 6);
    }
    CHECK(layout.spans[1].middle == Approx(layout.x.px(20011).value()));
}

TEST_CASE("Since when something is due is said where there is room", "[layout]") {
    Plot plot = windows(2);
    plot.spans[0].note = "overdue";
    plot.spans[0].more = "since Jun 2022";
    const auto note = [&](double width) {
        for (const Label& label : lay_out(plot, {width, 200}).labels)
            if (label.role == Role::note) return label.text;
        return std::string{};
    };
    CHECK(note(900) == "overdue since Jun 2022");
    CHECK(note(500) == "overdue");
}

TEST_CASE("The legend shows a line only where points are joined", "[layout]") {
    Plot plot = line_of(1);
    plot.series[0].runs.push_back({{5, 11}});
    plot.series.push_back({"t", {{{0, 1}, {5, 2}}}, Tone::second});
    const Layout layout = lay_out(plot, {});
    REQUIRE(layout.keys.size() == 2);
    CHECK(layout.keys[0].stroke == Stroke::none);
    CHECK(layout.keys[0].mark == Mark::circle);
    CHECK(layout.keys[1].stroke == Stroke::solid);
}

TEST_CASE("A legend of many rows does not press the data flat", "[layout]") {
    Plot plot = line_of(5);
    for (int i = 0; i < 9; ++i)
        plot.series.push_back({"a long name of a series " + std::to_string(i), {{{0, 1}, {4, 2}}}});
    const double height = good_height(plot, 480);
    CHECK(height > 480 * 9 / 16);
    CHECK(lay_out(plot, {480, height}).area.height > 0.3 * 480);
}

TEST_CASE("Decades are equally long on a logarithmic scale", "[layout]") {
    const Scale scale(AxisKind::logarithmic, {1, 1000}, 0, 300);
    CHECK(scale.px(10).value() == Approx(100));
    CHECK(scale.px(100).value() == Approx(200));
    CHECK_FALSE(scale.px(0));
    CHECK_FALSE(scale.px(-1));
    CHECK(scale.straight_at(150) == Approx(1.5));
}

TEST_CASE("The legend names each thing once, and a lone series not at all", "[layout]") {
    Plot plot = line_of(3);
    CHECK(legend_entries(plot).empty());
    plot.series.push_back(plot.series[0]);
    CHECK(legend_entries(plot).empty());
    plot.ribbons = {{"range", {{0, 1, 2}, {1, 1, 2}}}};
    CHECK(legend_entries(plot).size() == 2);
    plot = line_of(3);
    plot.series[0].runs[0][1].hollow = true;
    REQUIRE(legend_entries(plot).size() == 2);
    CHECK(legend_entries(plot)[1].text == "below detection, drawn at half the limit");
}

TEST_CASE("No line is drawn over a point that has no place", "[layout][thin]") {
    Plot plot = line_of(5);
    plot.series[0].runs[0][2].y = std::numeric_limits<double>::quiet_NaN();
    const DrawnSeries drawn_series = drawn(plot.series[0], lay_out(plot, {}));
    REQUIRE(drawn_series.lines.size() == 2);
    CHECK(drawn_series.lines[0].size() == 2);
    CHECK(drawn_series.lines[1].front().x == 3);
    CHECK(drawn_series.marks.size() == 4);
}

TEST_CASE("Long lines are thinned and keep their extremes", "[layout][thin]") {
    Plot plot = line_of(100000);
    plot.series[0].runs[0][54321].y = 500;
    const Layout layout = lay_out(plot, {});
    const DrawnSeries found = drawn(plot.series[0], layout);
    REQUIRE(found.lines.size() == 1);
    CHECK(found.lines[0].size() < 4 * 640 + 4);
    CHECK(std::ranges::is_sorted(found.lines[0], {}, &Point::x));
    CHECK(std::ranges::max(found.lines[0], {}, &Point::y).y == 500);
    CHECK(found.lines[0].front().x == 0);
    CHECK(found.lines[0].back().x == 99999);
    CHECK(found.marks.empty());
}

TEST_CASE("Lone and hollow points always have a mark", "[layout][thin]") {
    Plot plot = line_of(1);
    plot.series[0].mark = Mark::none;
    CHECK(drawn(plot.series[0], lay_out(plot, {})).marks.size() == 1);
    plot = line_of(2000);
    plot.series[0].runs[0][7].hollow = true;
    const DrawnSeries found = drawn(plot.series[0], lay_out(plot, {}));
    CHECK(found.marks.empty());
    CHECK(found.hollow_marks.size() == 1);
}
