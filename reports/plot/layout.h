// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "reports/plot/plot.h"
#include "reports/plot/scale.h"
#include "reports/plot/ticks.h"

#include <array>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace sumpbook::plot {

struct Size {
    double width = 640; ///< Pixels.
    double height = 360;
};

/// A rectangle of the picture in pixels, y downwards.
struct Box {
    double left = 0;
    double top = 0;
    double width = 0;
    double height = 0;
    [[nodiscard]] double right() const { return left + width; }
    [[nodiscard]] double bottom() const { return top + height; }
    [[nodiscard]] double middle() const { return left + width / 2; }
    [[nodiscard]] double centre() const { return top + height / 2; } ///< Half way down.
    /// Half a pixel of overlap is none: rounding does that.
    [[nodiscard]] bool overlaps(const Box& other) const;
    [[nodiscard]] bool within(const Box& other) const;
    auto operator<=>(const Box&) const = default;
};

enum class Role { title, axis_title, x_tick, y_tick, legend, band, rule, note };
enum class Anchor { start, middle, end };

/// One line of text and its place.
struct Label {
    Role role = Role::title;
    std::string text; ///< Plain, to be escaped by who writes markup.
    Box box;          ///< The room it has, its width an upper estimate.
    Anchor anchor = Anchor::start;
    double font_px = 12;
    bool bold = false;
    /// Where the text starts, has its middle or ends, by its anchor; and the line it stands on.
    [[nodiscard]] double x() const;
    [[nodiscard]] double baseline() const;
};

/// The sample in front of a legend's text, or the mark in front of a band's word.
struct Key {
    enum class Shape { line, area, bar, hollow, mark };
    Box box;
    Shape shape = Shape::line;
    Tone tone = Tone::first;
    Stroke stroke = Stroke::solid;
    Mark mark = Mark::none;
    std::optional<std::size_t> series; ///< Of which series it is the sample, if of one.
};

struct BandBox {
    Box box;
    Box strip; ///< A narrow strip in the full colour, beside the right edge.
    Tone tone = Tone::muted;
    std::string label;
};

inline constexpr double most_bar_share = 0.62; ///< Of its category's slot; the rest is air.
inline constexpr double most_bar_px = 84;      ///< Where there are few bars.

/// One part of one bar.
struct BarBox {
    Box box;
    Tone tone = Tone::first;
};

/// A window along its category's line.
struct SpanBox {
    Box box;
    double middle = 0; ///< Where its mark is drawn.
    Tone tone = Tone::first;
    bool before = false; ///< Its middle lies before the axis begins: an arrow left of the mark says so.
    /// The corners of that arrow, its point in the middle.
    [[nodiscard]] std::array<std::pair<double, double>, 3> arrow() const;
};

/// From what a label is about to the label, where it had to move.
struct Leader {
    double from_x = 0, from_y = 0, to_x = 0, to_y = 0;
    Tone tone = Tone::muted;
};

/// Everything of a picture but the data itself has its place here; `x` and `y` give the data theirs. Who
/// draws it draws, in this order: bands with their edges, grid, rules, ribbons, bars, spans, series, labels.
struct Layout {
    Size size;
    Box area; ///< Of the data.
    Scale x, y;
    std::vector<Tick> x_ticks, y_ticks; ///< Grid lines; none on category axes.
    std::vector<Label> labels;
    std::vector<Key> keys;
    std::vector<BandBox> bands;
    std::vector<BarBox> bars;
    double bar_share = most_bar_share; ///< How much of its category's slot a bar takes.
    std::vector<SpanBox> spans;
    std::vector<Leader> leaders;
    std::vector<std::string> dropped; ///< Texts for which there was no room.
};

inline constexpr double font_px = 12;
inline constexpr double title_px = 14;
inline constexpr double mark_px = 7;   ///< Across a mark of a series.
inline constexpr double hollow_px = 9; ///< Across a hollow mark,
inline constexpr double hole_px = 4.5; ///< and across its hole.

inline constexpr double usual_line_px = 22; ///< Of a category of an axis that goes down,
inline constexpr double least_line_px = 17; ///< and where room is scarce.

/// Places a plot in a picture. Never fails: what a plot lacks is missing from the picture, what does not fit
/// is in `dropped`; `faults` says so.
[[nodiscard]] Layout lay_out(const Plot& plot, Size size);

/// How high a picture of this width should be: 9/16 of it, and more where legend and titles would leave the
/// data too little; `line_px` for every category of a category axis that goes down.
[[nodiscard]] double good_height(const Plot& plot, double width, double line_px = usual_line_px);

} // namespace sumpbook::plot
