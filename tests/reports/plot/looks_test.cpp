// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/plot/looks.h"

#include "reports/plot/faults.h"
#include "reports/plot/mark_shape.h"
#include "reports/plot/palette.h"
#include "tests/catch.h"

#include <algorithm>
#include <cmath>

using namespace sumpbook;
using namespace sumpbook::plot;

namespace {

using Faults = std::vector<std::string>;

constexpr std::array series_tones{Tone::first,  Tone::second, Tone::third,
                                  Tone::fourth, Tone::fifth,  Tone::sixth};

/// Lines side by side, each of its tone.
Plot lines_of(const std::vector<Tone>& tones, Mark mark_of_all = Mark::circle, std::size_t points = 4) {
    Plot plot{"T", "D", {AxisKind::linear, "x, km"}, {AxisKind::linear, "y, ppm"}};
    for (const Tone tone : tones) {
        const double height = static_cast<double>(plot.series.size()) + 1;
        Series series{"line " + std::to_string(plot.series.size()), {{}}, tone};
        series.mark = mark_of_all;
        for (std::size_t i = 0; i < points; ++i)
            series.runs[0].push_back({static_cast<double>(i), height});
        plot.series.push_back(series);
    }
    return plot;
}

Plot bars_of(const std::vector<Tone>& tones) {
    Plot plot{"T", "D", {AxisKind::category, "", {}, {}, {"2026"}}, {AxisKind::linear, "EUR"}};
    for (const Tone tone : tones)
        plot.bars.push_back({"part " + std::to_string(plot.bars.size()), {10}, tone});
    return plot;
}

bool only(const Faults& found, const std::string& part) {
    CAPTURE(found, part);
    CHECK_FALSE(found.empty());
    return !found.empty() && std::ranges::all_of(found, [&](const std::string& fault) {
        return fault.find(part) != std::string::npos;
    });
}

} // namespace

TEST_CASE("The six series are told apart in colour and in grey, as lines, marks and bars", "[looks]") {
    const std::vector<Tone> six(series_tones.begin(), series_tones.end());
    CHECK(faults(lines_of(six)) == Faults{});
    CHECK(faults(bars_of(six)) == Faults{});
    CHECK(faults(lines_of(six, Mark::circle, 1)) == Faults{}); // lone points: no line to help
}

TEST_CASE("Two series or parts of one colour are named", "[looks]") {
    CHECK(faults(lines_of({Tone::first, Tone::second, Tone::first})) ==
          Faults{"The series \"line 2\" has the colour of: The series \"line 0\"",
                 "The series \"line 2\" cannot be told in grey from: The series \"line 0\""});
    CHECK(only(faults(bars_of({Tone::second, Tone::second})), "part 1\" "));
    // Other strokes and marks do not make up for it; nor do two greens that are nearly one.
    Plot plot = lines_of({Tone::first, Tone::first});
    plot.series[1].stroke = Stroke::dashed;
    plot.series[1].mark = Mark::none;
    CHECK(only(faults(plot), "has the colour of"));
    CHECK(only(faults(lines_of({Tone::sixth, Tone::good})), "has the colour of"));
}

TEST_CASE("Two series or parts that look the same in grey are named", "[looks]") {
    Plot plot = lines_of({Tone::first, Tone::second}, Mark::none);
    CHECK(only(faults(plot), "\"line 1\" cannot be told in grey from: The series \"line 0\""));
    plot.series[1].stroke = Stroke::dashed;
    CHECK(faults(plot) == Faults{});
    CHECK(only(faults(lines_of({Tone::first, Tone::second}, Mark::diamond)), "in grey"));
    // The marks of two long lines would touch each other and are left out: their lines are all there is.
    CHECK(faults(lines_of({Tone::first, Tone::second}, Mark::circle, 40)) == Faults{});
    CHECK(only(faults(lines_of({Tone::first, Tone::second}, Mark::circle, 400)), "in grey"));
    CHECK(only(faults(bars_of({Tone::first, Tone::good})), "in grey")); // both without lines in them
}

TEST_CASE("One thing in several parts is not compared with itself", "[looks]") {
    Plot plot = lines_of({Tone::first, Tone::first});
    plot.series[1].label = plot.series[0].label;
    CHECK(faults(plot) == Faults{});
}

TEST_CASE("What is seen and explained by no word is named", "[looks]") {
    Plot plot{"T", "D", {AxisKind::date, "Date"}, {AxisKind::category, "", {}, {}, {"oil"}}, {}, {}, {}, {},
              {},  {}};
    plot.spans = {{0, 20000, 20010, 20050, Tone::good, "later"}};
    const Faults both = faults(plot);
    REQUIRE(both.size() == 2);
    CHECK(both[0].find("what the spans stand for") != std::string::npos);
    CHECK(both[1].find("what the marks of the spans stand for") != std::string::npos);
    plot.span_label = "8 of 10 cases";
    plot.middle_label = "even chances";
    CHECK(faults(plot) == Faults{});
    Plot nameless = lines_of({Tone::first, Tone::second});
    nameless.series[0].label.clear();
    CHECK(only(faults(nameless), "no name"));
    nameless = bars_of({Tone::first, Tone::second});
    nameless.bars[1].label.clear();
    CHECK(only(faults(nameless), "no name"));
}

TEST_CASE("Colours are as far apart as their places in L*a*b* say", "[looks]") {
    // From memory: white 100, 0, 0; red 53.24, 80.09, 67.20; blue 32.30, 79.19, -107.86 (sRGB, D65).
    CHECK(difference({255, 255, 255}, {0, 0, 0}) == Approx(100).margin(0.05));
    CHECK(difference({255, 0, 0}, {0, 0, 0}) == Approx(std::hypot(53.24, 80.09, 67.20)).margin(0.1));
    CHECK(difference({0, 0, 255}, {255, 0, 0}) ==
          Approx(std::hypot(53.24 - 32.30, 80.09 - 79.19, 67.20 + 107.86)).margin(0.1));
    CHECK(difference({9, 8, 7}, {9, 8, 7}) == 0);
    // The two blues of Okabe and Ito, darkened and lightened for their grounds, are one to the eye.
    CHECK(difference(rgb("#0072B2"), rgb("#4085AC")) < 25);
    CHECK(difference(rgb("#529FCB"), rgb("#56B4E9")) < 25);
}

TEST_CASE("Every mark has an outline of its own within its square", "[looks]") {
    std::vector<std::size_t> counts;
    for (const Mark mark : {Mark::square, Mark::triangle, Mark::star, Mark::pentagon, Mark::diamond}) {
        const auto outline = corners(mark);
        REQUIRE(outline.size() >= 3);
        for (const Corner& corner : outline)
            CHECK((std::abs(corner.x) <= 1 + 1e-9 && std::abs(corner.y) <= 1 + 1e-9));
        CHECK((mark_share(mark) > 0.9 && mark_share(mark) < 1.6));
    }
    CHECK(corners(Mark::circle).empty());
    CHECK(mark_share(Mark::none) == 0);
    CHECK(corners(Mark::star).size() == 10);
    CHECK(corners(Mark::square)[0].x == corners(Mark::square)[3].x);
    CHECK(corners(Mark::diamond)[0].x == 0);
}
