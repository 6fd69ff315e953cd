// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/plot/faults.h"

#include "tests/catch.h"

#include <limits>

using namespace sumpbook;
using namespace sumpbook::plot;

namespace {

Plot sound() {
    Plot plot{"Iron",
              "Iron rises from 8 to 12 ppm.",
              {AxisKind::linear, "Odometer, km"},
              {AxisKind::linear, "Iron, ppm"}};
    plot.series = {{"iron", {{{1000, 8}, {3000, 12}}}}};
    plot.bands = {{"within", {}, 20, Tone::good}, {"watch", 20, {}, Tone::caution}};
    plot.rules = {{"oil change", 2000, true}, {"limit", 15}};
    plot.ribbons = {{"range", {{1000, 7, 9}, {3000, 11, 14}}}};
    return plot;
}

Plot stacked() {
    Plot plot{"Spent",
              "Spent by year.",
              {AxisKind::category, "", {}, {}, {"2024", "2025"}},
              {AxisKind::linear, "Spent, EUR"}};
    plot.bars = {{"fuel", {100, 200}}, {"tyres", {0, 90}, Tone::second}};
    return plot;
}

Plot windows() {
    Plot plot{"Due",
              "What falls due.",
              {AxisKind::date, "Date"},
              {AxisKind::category, "", {}, {}, {"oil", "chain"}}};
    plot.spans = {{0, 20000, 20010, 20050, Tone::good, "later"},
                  {1, 19990, 19995, 20000, Tone::danger, "overdue"}};
    plot.span_label = "8 of 10 cases";
    plot.middle_label = "even chances";
    return plot;
}

/// The one fault found; fails where there are none or several different ones.
bool only_fault(const Plot& plot, const std::string& part, Size size = {}) {
    const auto found = faults(plot, size);
    CAPTURE(found);
    CHECK_FALSE(found.empty());
    return !found.empty() && std::ranges::all_of(found, [&](const std::string& fault) {
        return fault.find(part) != std::string::npos;
    });
}

constexpr double no_number = std::numeric_limits<double>::quiet_NaN();

} // namespace

TEST_CASE("A sound picture has no fault", "[faults]") {
    CHECK(faults(sound()) == std::vector<std::string>{});
    CHECK(faults(stacked()) == std::vector<std::string>{});
    CHECK(faults(windows()) == std::vector<std::string>{});
}

TEST_CASE("A picture without data is named", "[faults]") {
    Plot plot = sound();
    plot.series = {{"iron", {{}, {}}}};
    plot.ribbons.clear();
    CHECK(only_fault(plot, "nothing to see"));
}

TEST_CASE("What a logarithmic axis cannot show is named", "[faults]") {
    Plot plot = sound();
    plot.y.kind = AxisKind::logarithmic;
    CHECK(faults(plot).empty());
    plot.series[0].runs[0][0].y = 0;
    CHECK(only_fault(plot, "logarithmic axis"));
    plot = sound();
    plot.y.kind = AxisKind::logarithmic;
    plot.ribbons[0].points[0].low = -1;
    CHECK(only_fault(plot, "logarithmic axis"));
}

TEST_CASE("A value that is no number is named, and no line goes over it", "[faults]") {
    Plot plot = sound();
    plot.series[0].runs[0] = {{1000, 8}, {2000, no_number}, {3000, 12}};
    CHECK(only_fault(plot, "no number"));
}

TEST_CASE("Axes without a title, a picture without one or without words are named", "[faults]") {
    Plot plot = sound();
    plot.x.title.clear();
    CHECK(only_fault(plot, "x axis has no title"));
    plot = sound();
    plot.y.title.clear();
    CHECK(only_fault(plot, "y axis has no title"));
    plot = sound();
    plot.title.clear();
    CHECK(only_fault(plot, "no title"));
    plot = sound();
    plot.description.clear();
    CHECK(only_fault(plot, "no description"));
}

TEST_CASE("Points and ends in the wrong order are named", "[faults]") {
    Plot plot = sound();
    std::swap(plot.series[0].runs[0][0], plot.series[0].runs[0][1]);
    CHECK(only_fault(plot, "goes back"));
    plot = sound();
    std::swap(plot.ribbons[0].points[0].low, plot.ribbons[0].points[0].high);
    CHECK(only_fault(plot, "low end above"));
    plot = sound();
    plot.bands[0] = {"within", 20, 10};
    CHECK(only_fault(plot, "ends before it begins"));
    plot = windows();
    plot.spans[0].middle = 19000;
    CHECK(only_fault(plot, "middle between its ends"));
    plot = sound();
    plot.y.from = 20;
    plot.y.to = 10;
    CHECK_FALSE(faults(plot).empty());
}

TEST_CASE("Bars and spans that do not match the categories are named", "[faults]") {
    Plot plot = stacked();
    plot.bars[0].values.pop_back();
    CHECK(only_fault(plot, "1 values for 2 categories"));
    plot = stacked();
    plot.bars[1].values[0] = -5;
    CHECK(only_fault(plot, "cannot be stacked"));
    plot = windows();
    plot.spans[1].category = 2;
    CHECK(only_fault(plot, "no category"));
}

TEST_CASE("Data outside given ends of an axis is named", "[faults]") {
    Plot plot = sound();
    plot.y.to = 10;
    CHECK(only_fault(plot, "outside the axis"));
    plot = windows();
    plot.x.from = 20001; // the second lies before it: an arrow says so
    CHECK(faults(plot).empty());
    plot.x.to = 20005;
    CHECK(only_fault(plot, "behind the end of the axis"));
}

TEST_CASE("A series drawn neither with marks nor a line is named", "[faults]") {
    Plot plot = sound();
    plot.series[0].mark = Mark::none;
    plot.series[0].stroke = Stroke::none;
    CHECK(only_fault(plot, "neither marks nor a line"));
}

TEST_CASE("Words for which there is no room are named", "[faults]") {
    Plot plot = sound();
    for (int i = 0; i < 40; ++i)
        plot.rules.push_back({"limit " + std::to_string(i), 10.0 + 0.1 * i});
    CHECK(only_fault(plot, "no room for"));
    plot = sound();
    for (int i = 0; i < 9; ++i)
        plot.rules.push_back({"something done that day", 2000.0 + i, true});
    CHECK(only_fault(plot, "no room for"));
    CHECK_FALSE(faults(sound(), {120, 90}).empty());
}

TEST_CASE("Labels on each other or outside the picture are named", "[faults]") {
    Layout layout = lay_out(sound(), {});
    REQUIRE(layout_faults(layout).empty());
    Layout overlapping = layout;
    overlapping.labels[1].box = overlapping.labels[0].box;
    REQUIRE_FALSE(layout_faults(overlapping).empty());
    CHECK(layout_faults(overlapping)[0].find("lies on") != std::string::npos);
    Layout leaving = layout;
    leaving.labels[0].box.left = -20;
    REQUIRE_FALSE(layout_faults(leaving).empty());
    CHECK(layout_faults(leaving)[0].find("leaves the picture") != std::string::npos);
}
