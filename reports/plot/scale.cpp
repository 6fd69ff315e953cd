// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/plot/scale.h"

#include <algorithm>
#include <cmath>

namespace sumpbook::plot {

namespace {

std::optional<double> straightened(AxisKind kind, double value) {
    if (!std::isfinite(value)) return std::nullopt;
    if (kind != AxisKind::logarithmic) return value;
    return value > 0 ? std::optional(std::log10(value)) : std::nullopt;
}

/// Grows by the values it is shown.
class Extent {
public:
    explicit Extent(AxisKind kind)
        : kind_(kind) {}
    void show(double value) {
        if (!straightened(kind_, value)) return;
        if (!range_) range_ = Range{value, value};
        range_ = Range{std::min(range_->from, value), std::max(range_->to, value)};
    }
    [[nodiscard]] std::optional<Range> range() const { return range_; }

private:
    AxisKind kind_;
    std::optional<Range> range_;
};

void show_rules(Extent& extent, const Plot& plot, bool vertical) {
    for (const Rule& rule : plot.rules)
        if (rule.vertical == vertical) extent.show(rule.at);
}

void show_bars(Extent& extent, const Plot& plot) {
    std::size_t longest = 0;
    for (const Bars& bars : plot.bars)
        longest = std::max(longest, bars.values.size());
    for (std::size_t i = 0; i < longest; ++i) {
        double total = 0;
        for (const Bars& bars : plot.bars)
            if (i < bars.values.size() && std::isfinite(bars.values[i])) total += bars.values[i];
        extent.show(total);
    }
    if (longest > 0) extent.show(0);
}

} // namespace

Scale::Scale(AxisKind kind, Range range, double start_px, double end_px)
    : kind_(kind)
    , range_(range)
    , from_(straightened(kind, range.from).value_or(0))
    , to_(straightened(kind, range.to).value_or(1))
    , start_px_(start_px)
    , end_px_(end_px) {}

std::optional<double> Scale::straight(double value) const { return straightened(kind_, value); }

std::optional<double> Scale::px(double value) const {
    const std::optional<double> place = straight(value);
    if (!place || from_ == to_) return std::nullopt;
    return start_px_ + (*place - from_) / (to_ - from_) * (end_px_ - start_px_);
}

double Scale::straight_at(double px) const {
    return from_ + (px - start_px_) / (end_px_ - start_px_) * (to_ - from_);
}

bool Scale::shows(double value) const {
    const std::optional<double> place = straight(value);
    const double slack = std::abs(to_ - from_) * 1e-9;
    return place && *place >= from_ - slack && *place <= to_ + slack;
}

std::optional<Range> data_range_x(const Plot& plot) {
    Extent extent(plot.x.kind);
    for (const Series& series : plot.series)
        for (const auto& run : series.runs)
            for (const Point& point : run)
                extent.show(point.x);
    for (const Ribbon& ribbon : plot.ribbons)
        for (const RibbonPoint& point : ribbon.points)
            extent.show(point.x);
    for (const Span& span : plot.spans) {
        extent.show(span.from);
        extent.show(span.to);
    }
    show_rules(extent, plot, true);
    return extent.range();
}

std::optional<Range> data_range_y(const Plot& plot) {
    Extent extent(plot.y.kind);
    for (const Series& series : plot.series)
        for (const auto& run : series.runs)
            for (const Point& point : run)
                extent.show(point.y);
    for (const Ribbon& ribbon : plot.ribbons)
        for (const RibbonPoint& point : ribbon.points) {
            extent.show(point.low);
            extent.show(point.high);
        }
    show_bars(extent, plot);
    show_rules(extent, plot, false);
    return extent.range();
}

} // namespace sumpbook::plot
