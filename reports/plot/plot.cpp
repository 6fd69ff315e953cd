// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/plot/plot.h"

#include <algorithm>
#include <cmath>

namespace sumpbook::plot {

bool empty(const Plot& plot) {
    const auto has_points = [](const Series& series) {
        return std::ranges::any_of(series.runs, [](const auto& run) { return !run.empty(); });
    };
    const auto has_values = [](const Bars& bars) {
        return std::ranges::any_of(bars.values, [](double value) { return value > 0; });
    };
    const auto has_stretch = [](const Ribbon& ribbon) { return !ribbon.points.empty(); };
    return std::ranges::none_of(plot.series, has_points) && std::ranges::none_of(plot.bars, has_values) &&
           std::ranges::none_of(plot.ribbons, has_stretch) && plot.spans.empty();
}

double day_position(const Date& date) {
    return static_cast<double>(std::chrono::sys_days{date}.time_since_epoch().count());
}

Date day_at(double position) {
    return Date{std::chrono::sys_days{std::chrono::days{std::llround(std::floor(position))}}};
}

} // namespace sumpbook::plot
