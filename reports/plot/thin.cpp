// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/plot/thin.h"

#include "reports/plot/palette.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace sumpbook::plot {

namespace {

using Run = std::vector<Point>;

std::vector<Run> broken_at_gaps(const Series& series, const Layout& layout) {
    std::vector<Run> result;
    for (const Run& run : series.runs) {
        result.emplace_back();
        for (const Point& point : run) {
            if (layout.x.px(point.x) && layout.y.px(point.y))
                result.back().push_back(point);
            else
                result.emplace_back();
        }
    }
    std::erase_if(result, [](const Run& run) { return run.empty(); });
    return result;
}

/// First, lowest, highest and last of the points that share a pixel, in their order.
void keep_of_pixel(Run& kept, Run::const_iterator from, Run::const_iterator to) {
    const auto [lowest, highest] =
        std::minmax_element(from, to, [](const Point& a, const Point& b) { return a.y < b.y; });
    std::array keep{from, lowest, highest, to - 1};
    std::ranges::sort(keep);
    const auto repeated = std::ranges::unique(keep);
    std::for_each(keep.begin(), repeated.begin(), [&](auto at) { kept.push_back(*at); });
}

Run thinned(const Run& run, const Layout& layout) {
    constexpr double most_a_pixel = 4;
    if (static_cast<double>(run.size()) <= most_a_pixel * layout.area.width) return run;
    const auto pixel = [&](const Point& point) { return std::floor(layout.x.px(point.x).value_or(0)); };
    Run kept;
    for (auto from = run.begin(); from != run.end();) {
        const auto to =
            std::find_if(from, run.end(), [&](const Point& point) { return pixel(point) != pixel(*from); });
        keep_of_pixel(kept, from, to);
        from = to;
    }
    return kept;
}

bool touching(const Series& series, const Layout& layout) {
    std::size_t count = 0;
    for (const Run& run : series.runs)
        count += run.size();
    return static_cast<double>(count) * (mark_px + 1) > layout.area.width;
}

} // namespace

bool shows_marks(const Series& series, const Layout& layout) {
    return series.mark != Mark::none && (series.stroke == Stroke::none || !touching(series, layout));
}

DrawnSeries drawn(const Series& series, const Layout& layout) {
    constexpr double thin_line_px = 1.25;
    const bool line = series.stroke != Stroke::none;
    const bool marked = shows_marks(series, layout);
    DrawnSeries result;
    if (touching(series, layout)) result.line_px = thin_line_px;
    const std::vector<Run> runs = broken_at_gaps(series, layout);
    for (const Run& run : runs) {
        for (const Point& point : run) {
            if (point.hollow)
                result.hollow_marks.push_back(point);
            else if (marked || (run.size() == 1 && line))
                result.marks.push_back(point);
        }
        if (line && run.size() > 1) result.lines.push_back(thinned(run, layout));
    }
    return result;
}

} // namespace sumpbook::plot
