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
