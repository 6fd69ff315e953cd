// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "reports/plot/layout.h"

namespace sumpbook::plot {

/// What is drawn of a series: every point in it has a place on both axes.
struct DrawnSeries {
    std::vector<std::vector<Point>> lines; ///< Two points or more each.
    std::vector<Point> marks;
    std::vector<Point> hollow_marks;
};

/// Runs are broken where a point has no place on its axis; never is a line drawn over such a point. Lines
/// with more than four points a pixel keep the first, the last, the lowest and the highest of each pixel.
/// Marks are left out where they would touch each other all along (more of them than fit side by side), but
/// for points that stand alone and for hollow ones, which always have one.
[[nodiscard]] DrawnSeries drawn(const Series& series, const Layout& layout);

} // namespace sumpbook::plot
