// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/plot/faults.h"

#include "reports/plot/looks.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace sumpbook::plot {

namespace {

using Sentences = std::vector<std::string>;

void look_at_value(Sentences& found, const Axis& axis, double value, const std::string& whose) {
    if (!std::isfinite(value))
        found.push_back(
            fmt::format("{} holds a value that is no number; nothing can be drawn there.", whose));
    else if (axis.kind == AxisKind::logarithmic && value <= 0)
        found.push_back(fmt::format("{} holds {}, which the logarithmic axis \"{}\" cannot show.", whose,
                                    value, axis.title));
    else if ((axis.from && value < *axis.from) || (axis.to && value > *axis.to))
        found.push_back(fmt::format("{} holds {}, outside the axis \"{}\".", whose, value, axis.title));
}

void look_at_axis(Sentences& found, const Axis& axis, const char* which) {
    if (axis.kind == AxisKind::category) {
        if (axis.categories.empty()) found.push_back(fmt::format("The {} axis has no categories.", which));
        return;
    }
    if (axis.title.empty())
        found.push_back(fmt::format("The {} axis has no title: quantity and unit.", which));
    if (axis.from && axis.to && !(*axis.from < *axis.to))
        found.push_back(fmt::format("The {} axis ends before it begins.", which));
    for (const std::optional<double>& end : {axis.from, axis.to})
        if (end && axis.kind == AxisKind::logarithmic && !(*end > 0))
            found.push_back(fmt::format("The logarithmic {} axis has an end that is not above 0.", which));
}

void look_at_series(Sentences& found, const Plot& plot, const Series& series) {
    const std::string whose = fmt::format("The series \"{}\"", series.label);
    if (series.mark == Mark::none && series.stroke == Stroke::none)
        found.push_back(whose + " has neither marks nor a line.");
    for (const auto& run : series.runs) {
        for (const Point& point : run) {
            look_at_value(found, plot.x, point.x, whose);
            look_at_value(found, plot.y, point.y, whose);
        }
        if (!std::ranges::is_sorted(run, {}, &Point::x))
            found.push_back(whose + " goes back along the x axis.");
    }
}

void look_at_ribbon(Sentences& found, const Plot& plot, const Ribbon& ribbon) {
    const std::string whose = fmt::format("The ribbon \"{}\"", ribbon.label);
    for (const RibbonPoint& point : ribbon.points) {
        look_at_value(found, plot.x, point.x, whose);
        look_at_value(found, plot.y, point.low, whose);
        look_at_value(found, plot.y, point.high, whose);
        if (point.low > point.high) found.push_back(whose + " has its low end above its high end.");
    }
    if (!std::ranges::is_sorted(ribbon.points, {}, &RibbonPoint::x))
        found.push_back(whose + " goes back along the x axis.");
    if (ribbon.points.size() == 1) found.push_back(whose + " has a single point: nothing of it is seen.");
}

void look_at_bars(Sentences& found, const Plot& plot, const Bars& bars) {
    const std::string whose = fmt::format("The bars \"{}\"", bars.label);
    if (plot.x.kind != AxisKind::category || bars.values.size() != plot.x.categories.size())
        found.push_back(fmt::format("{} have {} values for {} categories.", whose, bars.values.size(),
                                    plot.x.categories.size()));
    for (const double value : bars.values)
        if (!std::isfinite(value) || value < 0)
            found.push_back(fmt::format("{} hold {}, which cannot be stacked.", whose, value));
}

void look_at_span(Sentences& found, const Plot& plot, const Span& span) {
    const std::string whose = fmt::format("The span in line {}", span.category + 1);
    if (plot.y.kind != AxisKind::category || span.category >= plot.y.categories.size())
        found.push_back(whose + " has no category.");
    for (const double value : {span.from, span.middle, span.to})
        if (!std::isfinite(value)) found.push_back(whose + " holds a value that is no number.");
    if (plot.x.to && span.middle > *plot.x.to) found.push_back(whose + " lies behind the end of the axis.");
    if (span.from > span.middle || span.middle > span.to)
        found.push_back(whose + " does not have its middle between its ends.");
}

void look_at_ground(Sentences& found, const Plot& plot) {
    for (const Band& band : plot.bands)
        if (band.from && band.to && !(*band.from < *band.to))
            found.push_back(fmt::format("The band \"{}\" ends before it begins.", band.label));
    for (const Rule& rule : plot.rules)
        look_at_value(found, rule.vertical ? plot.x : plot.y, rule.at,
                      fmt::format("The rule \"{}\"", rule.label));
}

} // namespace

std::vector<std::string> layout_faults(const Layout& layout) {
    constexpr double least_area_px = 60;
    Sentences found;
    const Box picture{0, 0, layout.size.width, layout.size.height};
    if (layout.area.width < least_area_px || layout.area.height < least_area_px)
        found.emplace_back("There is hardly any room left for the data.");
    for (const std::string& text : layout.dropped)
        found.push_back(fmt::format("There is no room for \"{}\".", text));
    for (std::size_t i = 0; i < layout.labels.size(); ++i) {
        const Label& label = layout.labels[i];
        if (!label.box.within(picture))
            found.push_back(fmt::format("\"{}\" leaves the picture.", label.text));
        for (std::size_t j = 0; j < i; ++j)
            if (label.box.overlaps(layout.labels[j].box))
                found.push_back(fmt::format("\"{}\" lies on \"{}\".", label.text, layout.labels[j].text));
    }
    return found;
}

std::vector<std::string> faults(const Plot& plot, Size size) {
    Sentences found;
    if (empty(plot)) found.emplace_back("There is nothing to see: no point, no bar, no span.");
    if (plot.title.empty()) found.emplace_back("The picture has no title.");
    if (plot.description.empty())
        found.emplace_back("The picture has no description for those who do not see it.");
    look_at_axis(found, plot.x, "x");
    look_at_axis(found, plot.y, "y");
    for (const Series& series : plot.series)
        look_at_series(found, plot, series);
    for (const Ribbon& ribbon : plot.ribbons)
        look_at_ribbon(found, plot, ribbon);
    for (const Bars& bars : plot.bars)
        look_at_bars(found, plot, bars);
    for (const Span& span : plot.spans)
        look_at_span(found, plot, span);
    look_at_ground(found, plot);
    const Layout layout = lay_out(plot, size);
    for (auto&& some : {looks_faults(plot, layout), layout_faults(layout)})
        found.insert(found.end(), some.begin(), some.end());
    return found;
}

} // namespace sumpbook::plot
