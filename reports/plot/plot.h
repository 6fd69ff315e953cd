// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/quantity/dates.h"

#include <optional>
#include <string>
#include <vector>

/// A picture as plain data: what is to be seen, not how. Drawn by `render` with Qt Charts and by `write` as
/// SVG; both take ticks and placed labels from here, so that both show the same.
namespace sumpbook::plot {

/// What an axis measures. A position on a date axis is a day: day_position(date), days since 1970-01-01; on a
/// category axis the index of the category, 0 first.
enum class AxisKind { linear, logarithmic, date, category };

struct Axis {
    AxisKind kind = AxisKind::linear;
    std::string title;          ///< Quantity and unit: "Odometer, km". Never empty, except on category axes.
    std::optional<double> from; ///< Absent: from the data, widened to a tick.
    std::optional<double> to;
    std::vector<std::string> categories; ///< Of a category axis.
};

/// What a part of the picture stands for; the palette turns it into a colour that survives colour blindness
/// and grey, and the shape or stroke that goes with it.
enum class Tone { first, second, third, fourth, fifth, sixth, good, caution, danger, muted };

enum class Stroke { none, solid, dashed, dotted };
enum class Mark { none, circle, square, triangle, diamond, star, pentagon };

struct Point {
    double x = 0; ///< In the unit of its axis.
    double y = 0;
    bool hollow = false; ///< Not measured as such, see Plot::hollow_label.
};

/// Points joined by a line within each run; nothing is drawn from one run to the next.
struct Series {
    std::string label; ///< In the legend.
    std::vector<std::vector<Point>> runs;
    Tone tone = Tone::first;
    Stroke stroke = Stroke::solid; ///< Solid: the stroke of the tone where there are marks.
    Mark mark = Mark::circle;      ///< Circle: the mark of the tone.
};

/// A stretch of the y axis with a word to it: a limit's level, the band of a grade. Absent ends: to the edge.
struct Band {
    std::string label;
    std::optional<double> from;
    std::optional<double> to;
    Tone tone = Tone::muted;
};

/// A straight line across the picture with a word to it, at a y, or at an x (`vertical`).
struct Rule {
    std::string label;
    double at = 0;
    bool vertical = false;
    Tone tone = Tone::muted;
    Stroke stroke = Stroke::dashed;
};

/// A range that goes along the x axis: the 10 to 90 % of a forecast.
struct RibbonPoint {
    double x = 0;
    double low = 0;
    double high = 0;
};
struct Ribbon {
    std::string label;
    std::vector<RibbonPoint> points;
    Tone tone = Tone::first;
};

/// One part of stacked bars: a value for each category of the x axis, none below 0.
struct Bars {
    std::string label;
    std::vector<double> values;
    Tone tone = Tone::first;
};

/// A stretch along the x axis in one category of the y axis, with a mark for its middle: a due window.
struct Span {
    std::size_t category = 0;
    double from = 0;
    double middle = 0;
    double to = 0;
    Tone tone = Tone::first;
    std::string note; ///< A short word beside it: "overdue"; may be empty.
    std::string more; ///< What follows the note in pictures that are wide enough: "since Jun 2022".
};

struct Plot {
    std::string title;
    std::string description; ///< What it shows, in words: read aloud where it cannot be seen.
    Axis x;
    Axis y;
    std::vector<Series> series;
    std::vector<Band> bands;
    std::vector<Rule> rules;
    std::vector<Ribbon> ribbons;
    std::vector<Bars> bars;
    std::vector<Span> spans;
    std::string span_label;   ///< What the stretch of a span says, in the legend; empty: not said.
    std::string middle_label; ///< What its mark says.
    std::string hollow_label = "below detection, drawn at half the limit"; ///< What hollow points say.
};

/// True where there is nothing to see: such a plot is not drawn, a sentence says why.
[[nodiscard]] bool empty(const Plot& plot);

[[nodiscard]] double day_position(const Date& date);
[[nodiscard]] Date day_at(double position); ///< The day that contains the position.

} // namespace sumpbook::plot
