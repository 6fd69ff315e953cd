// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/plot/numbers.h"

#include "reports/plot/text.h"

#include <fmt/format.h>

#include <cmath>

namespace sumpbook::plot {

namespace {

std::string number(double value) {
    if (!std::isfinite(value)) return "no number";
    std::string text = grouped_number(value, 2);
    text.erase(text.find_last_not_of('0') + 1);
    if (text.ends_with('.')) text.pop_back();
    return text;
}

std::string place(const Axis& axis, double at) {
    if (axis.kind == AxisKind::date) return spelled_text(day_at(at));
    const auto index = static_cast<std::size_t>(std::max(at, 0.0));
    if (axis.kind == AxisKind::category && index < axis.categories.size()) return axis.categories[index];
    return number(at);
}

std::string joined(const std::vector<std::string>& parts) {
    std::string text;
    for (const std::string& part : parts)
        text += (text.empty() ? "" : ", ") + part;
    return text;
}

/// The beginning and the end of a list too long to be listened to.
std::vector<std::string> cut(std::vector<std::string> parts) {
    constexpr std::ptrdiff_t most = 40, each = 15; // DESIGN
    const auto size = std::ssize(parts);
    if (size <= most) return parts;
    parts[each] = fmt::format("{} more between", size - 2 * each);
    parts.erase(parts.begin() + each + 1, parts.end() - each);
    return parts;
}

std::string named(const std::string& label, const std::vector<std::string>& parts) {
    if (parts.empty()) return {};
    return (label.empty() ? "" : label + ": ") + joined(cut(parts)) + ". ";
}

std::string of_series(const Plot& plot, const Series& series) {
    std::vector<std::string> parts;
    for (const auto& run : series.runs)
        for (const Point& point : run)
            parts.push_back(fmt::format("{} at {}{}", number(point.y), place(plot.x, point.x),
                                        point.hollow ? " (" + plot.hollow_label + ")" : ""));
    return named(series.label, parts);
}

std::string of_ribbon(const Plot& plot, const Ribbon& ribbon) {
    std::vector<std::string> parts;
    for (const RibbonPoint& point : ribbon.points)
        parts.push_back(
            fmt::format("{} to {} at {}", number(point.low), number(point.high), place(plot.x, point.x)));
    return named(ribbon.label, parts);
}

std::string of_bars(const Plot& plot, const Bars& bars) {
    std::vector<std::string> parts;
    for (std::size_t i = 0; i < bars.values.size(); ++i)
        if (bars.values[i] > 0)
            parts.push_back(
                fmt::format("{} in {}", number(bars.values[i]), place(plot.x, static_cast<double>(i))));
    return named(bars.label, parts);
}

std::string of_span(const Plot& plot, const Span& span) {
    std::vector<std::string> parts;
    if (!span.note.empty()) parts.push_back(span.note + (span.more.empty() ? "" : " " + span.more));
    parts.push_back(place(plot.x, span.middle));
    if (span.from < span.to)
        parts.push_back(fmt::format("from {} to {}", place(plot.x, span.from), place(plot.x, span.to)));
    return named(place(plot.y, static_cast<double>(span.category)), parts);
}

} // namespace

std::string numbers_text(const Plot& plot) {
    std::string text;
    for (const Bars& bars : plot.bars)
        text += of_bars(plot, bars);
    for (const Series& series : plot.series)
        text += of_series(plot, series);
    for (const Ribbon& ribbon : plot.ribbons)
        text += of_ribbon(plot, ribbon);
    for (const Span& span : plot.spans)
        text += of_span(plot, span);
    if (!text.empty()) text.pop_back();
    return text;
}

} // namespace sumpbook::plot
