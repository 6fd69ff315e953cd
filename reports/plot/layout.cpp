// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/plot/layout.h"

#include "reports/plot/legend.h"
#include "reports/plot/side_labels.h"
#include "reports/plot/text.h"
#include "reports/plot/thin.h"

#include <algorithm>
#include <cmath>

namespace sumpbook::plot {

namespace {

constexpr double margin = 8;
constexpr double tick_gap = 6;  // beside the area
constexpr double tick_drop = 9; // under it: below the lowest label beside it
constexpr double line_height = 1.35;
constexpr double inset = 7; // between the area's edge and the outermost tick, so that marks are whole
constexpr double most_of_left = 0.38; // of the width, for category labels beside the area

constexpr double span_px = 10;
constexpr double arrow_room = 15; // left of a mark whose place is before the axis begins

/// What the sides of the area take from the picture.
struct Margins {
    double left = margin;
    double right = margin;
    double top = margin;
    double bottom = margin;
};

double line_of(double px) { return px * line_height; }

/// Titles and legend, and the height they take from the top.
double place_head(Layout& layout, const Plot& plot) {
    double top = margin;
    const double room = layout.size.width - 2 * margin;
    for (const std::string& line : wrapped(plot.title, room, title_px, 2, true)) {
        const double width = text_width(line, title_px, true);
        layout.labels.push_back(
            {Role::title, line, {margin, top, width, line_of(title_px)}, Anchor::start, title_px, true});
        top += line_of(title_px);
    }
    const std::vector<LegendEntry> entries = legend_entries(plot);
    if (!entries.empty()) top += 4;
    top += place_legend(layout, entries, margin, layout.size.width - margin, top);
    if (const std::string text = shortened(plot.y.title, room, font_px); !text.empty()) {
        top += 4;
        layout.labels.push_back({Role::axis_title,
                                 text,
                                 {margin, top, text_width(text, font_px), line_of(font_px)},
                                 Anchor::start});
        top += line_of(font_px);
    }
    return top + 4;
}

/// A long list: whoever looks at its beginning does not see its end, and the days are written there as well.
bool repeats_ticks(const Plot& plot) {
    constexpr std::size_t from_lines = 18; // DESIGN
    return plot.y.kind == AxisKind::category && plot.y.categories.size() >= from_lines;
}
constexpr double top_ticks = line_height * font_px + 2; // their room over the area and its flags

/// The samples of the legend as the data is drawn: without marks where they would touch each other, without
/// a line where no two points are joined.
void match_keys(Layout& layout, const Plot& plot) {
    for (Key& key : layout.keys) {
        if (!key.series) continue;
        const Series& series = plot.series[*key.series];
        if (!shows_marks(series, layout)) key.mark = Mark::none;
        if (key.mark != Mark::none && drawn(series, layout).lines.empty()) key.stroke = Stroke::none;
    }
}

double bottom_height(const Plot& plot) {
    return margin + tick_drop + line_of(font_px) + (plot.x.title.empty() ? 0 : line_of(font_px) + 2);
}

void set_scales(Layout& layout, const Plot& plot) {
    const Box& area = layout.area;
    const bool categories_x = plot.x.kind == AxisKind::category;
    const double inset_x = categories_x ? 0 : inset;
    const double inset_top = plot.y.kind == AxisKind::category ? 0 : inset;
    const double inset_bottom = plot.bars.empty() ? inset_top : 0;
    const Range x = nice(plot.x, data_range_x(plot).value_or(Range{0, 0}),
                         most_ticks(Direction::across, area.width, font_px));
    const Range y = nice(plot.y, data_range_y(plot).value_or(Range{0, 0}),
                         most_ticks(Direction::up, area.height, font_px));
    layout.x = Scale(plot.x.kind, x, area.left + inset_x, area.right() - inset_x);
    layout.y = plot.y.kind == AxisKind::category
                   ? Scale(plot.y.kind, y, area.top, area.bottom())
                   : Scale(plot.y.kind, y, area.bottom() - inset_bottom, area.top + inset_top);
    layout.x_ticks = ticks(plot.x, x, Direction::across, area.width - 2 * inset_x, font_px);
    layout.y_ticks = ticks(plot.y, y, Direction::up, area.height - inset_top - inset_bottom, font_px);
}

void place_y_labels(Layout& layout, double room) {
    for (const Tick& tick : layout.y_ticks) {
        const std::string text = shortened(tick.label, room, font_px);
        if (text.empty()) continue;
        const double width = text_width(text, font_px);
        const double centre = layout.y.px(tick.at).value_or(layout.area.centre());
        layout.labels.push_back(
            {Role::y_tick,
             text,
             {layout.area.left - tick_gap - width, centre - line_of(font_px) / 2, width, line_of(font_px)},
             Anchor::end});
    }
}

void place_x_ticks(Layout& layout, double top) {
    for (const Tick& tick : layout.x_ticks) {
        if (tick.label.empty()) continue;
        const double width = text_width(tick.label, font_px);
        const double middle = layout.x.px(tick.at).value_or(layout.area.middle());
        layout.labels.push_back(
            {Role::x_tick, tick.label, {middle - width / 2, top, width, line_of(font_px)}, Anchor::middle});
    }
}

void place_x_labels(Layout& layout, const Plot& plot) {
    const double top = layout.area.bottom() + tick_drop;
    place_x_ticks(layout, top);
    if (repeats_ticks(plot)) place_x_ticks(layout, layout.area.top - flags_height(layout, plot) - top_ticks);
    if (plot.x.title.empty()) return;
    const std::string text = shortened(plot.x.title, layout.size.width - 2 * margin, font_px);
    const double width = text_width(text, font_px);
    const double left = std::clamp(layout.area.middle() - width / 2, margin,
                                   std::max(margin, layout.size.width - margin - width));
    layout.labels.push_back({Role::axis_title,
                             text,
                             {left, top + line_of(font_px) + 2, width, line_of(font_px)},
                             Anchor::middle});
}

double widest_y_label(const Layout& layout, double room) {
    double widest = 0;
    for (const Tick& tick : layout.y_ticks)
        widest = std::max(widest, text_width(shortened(tick.label, room, font_px), font_px));
    return widest;
}

/// How far the outermost x labels stick out of the area, left and right.
std::pair<double, double> overhang(const Layout& layout) {
    std::pair<double, double> result{0, 0};
    for (const Tick& tick : layout.x_ticks) {
        const double half = text_width(tick.label, font_px) / 2;
        const double middle = layout.x.px(tick.at).value_or(layout.area.middle());
        result.first = std::max(result.first, layout.area.left - (middle - half));
        result.second = std::max(result.second, middle + half - layout.area.right());
    }
    return result;
}

Box area_of(Size size, const Margins& margins) {
    return {margins.left, margins.top, std::max(1.0, size.width - margins.left - margins.right),
            std::max(1.0, size.height - margins.top - margins.bottom)};
}

/// The margins depend on the ticks and the ticks on the room that is left: a few rounds settle it, and
/// margins only grow.
Margins settle(Layout& layout, const Plot& plot, Margins margins) {
    constexpr int rounds = 4;
    for (int round = 0;; ++round) {
        layout.area = area_of(layout.size, margins);
        set_scales(layout, plot);
        if (round == rounds) return margins;
        const auto [left, right] = overhang(layout);
        const double labels = widest_y_label(layout, layout.size.width * most_of_left);
        margins.left = std::max({margins.left, margin + labels + tick_gap, margin + left});
        margins.right = std::max(margins.right, margin + right);
    }
}

void place_bands(Layout& layout, const Plot& plot) {
    constexpr double strip_px = 4;
    constexpr double strip_gap = 2;
    const Box& area = layout.area;
    for (const Band& band : plot.bands) {
        const double bottom = band.from ? layout.y.px(*band.from).value_or(area.bottom()) : area.bottom();
        const double top = band.to ? layout.y.px(*band.to).value_or(area.bottom()) : area.top;
        const double upper = std::clamp(std::min(top, bottom), area.top, area.bottom());
        const double lower = std::clamp(std::max(top, bottom), area.top, area.bottom());
        if (lower - upper < 0.5) continue; // outside the picture
        layout.bands.push_back({{area.left, upper, area.width, lower - upper},
                                {area.right() + strip_gap, upper, strip_px, lower - upper},
                                band.tone,
                                band.label});
    }
}

void place_bars(Layout& layout, const Plot& plot) {
    const std::size_t count = plot.x.categories.size();
    const double slot = layout.area.width / static_cast<double>(std::max<std::size_t>(count, 1));
    layout.bar_share = std::min(most_bar_share, most_bar_px / slot);
    const double width = slot * layout.bar_share;
    for (std::size_t i = 0; i < count; ++i) {
        double total = 0;
        for (const Bars& bars : plot.bars) {
            if (i >= bars.values.size() || !(bars.values[i] > 0) || !std::isfinite(bars.values[i])) continue;
            const double bottom = layout.y.px(total).value_or(layout.area.bottom());
            total += bars.values[i];
            const double top = std::max(layout.y.px(total).value_or(bottom), layout.area.top);
            const double middle = layout.x.px(static_cast<double>(i)).value_or(0);
            layout.bars.push_back({{middle - width / 2, top, width, bottom - top}, bars.tone});
        }
    }
}

void place_spans(Layout& layout, const Plot& plot) {
    const auto inside = [&](double value) {
        return std::clamp(layout.x.px(value).value_or(layout.area.left), layout.area.left,
                          layout.area.right());
    };
    for (const Span& span : plot.spans) {
        const double centre = layout.y.px(static_cast<double>(span.category)).value_or(layout.area.top);
        const double from = inside(span.from);
        const bool before = span.middle < layout.x.range().from;
        layout.spans.push_back({{from, centre - span_px / 2, inside(span.to) - from, span_px},
                                before ? layout.area.left + arrow_room : inside(span.middle),
                                span.tone,
                                before});
    }
}

} // namespace

bool Box::overlaps(const Box& other) const {
    constexpr double slack = 0.5;
    return left + slack < other.right() && other.left + slack < right() && top + slack < other.bottom() &&
           other.top + slack < bottom();
}

bool Box::within(const Box& other) const {
    constexpr double slack = 0.5;
    return left >= other.left - slack && top >= other.top - slack && right() <= other.right() + slack &&
           bottom() <= other.bottom() + slack;
}

std::array<std::pair<double, double>, 3> SpanBox::arrow() const {
    constexpr double near = 8, far = 13, half = 4.5;
    const double centre = box.centre();
    return {{{middle - near, centre - half}, {middle - far, centre}, {middle - near, centre + half}}};
}

double Label::x() const {
    switch (anchor) {
    case Anchor::start:
        return box.left;
    case Anchor::middle:
        return box.middle();
    case Anchor::end:
        break;
    }
    return box.right();
}

double Label::baseline() const { return box.centre() + 0.36 * font_px; }

Layout lay_out(const Plot& plot, Size size) {
    Layout layout;
    layout.size = size;
    Margins margins;
    margins.top = place_head(layout, plot) + (repeats_ticks(plot) ? top_ticks : 0);
    margins.bottom = bottom_height(plot);
    margins.right = std::max(margin, right_labels_width(plot, size) + margin);
    margins = settle(layout, plot, margins);
    if (const double above = flags_height(layout, plot); above > 0) {
        margins.top += above;
        settle(layout, plot, margins);
    }
    match_keys(layout, plot);
    place_y_labels(layout, layout.area.left - margin - tick_gap);
    place_x_labels(layout, plot);
    place_bands(layout, plot);
    place_bars(layout, plot);
    place_spans(layout, plot);
    place_flags(layout, plot);
    place_right_labels(layout, plot);
    return layout;
}

double good_height(const Plot& plot, double width, double line_px) {
    constexpr double least_of_width = 0.36; // of the data
    const double usual = std::round(width * 9 / 16);
    Layout head;
    head.size = {width, usual};
    const double around = place_head(head, plot) + bottom_height(plot) +
                          (repeats_ticks(plot) ? top_ticks : 0) +
                          (std::ranges::any_of(plot.rules, &Rule::vertical) ? line_of(font_px) : 0);
    if (plot.y.kind != AxisKind::category)
        return std::max(usual, std::round(around + least_of_width * width));
    return std::round(around + line_px * static_cast<double>(plot.y.categories.size()));
}

} // namespace sumpbook::plot
