// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "reports/plot/layout.h"

namespace sumpbook::plot {

/// What is drawn of a series: every point in it has a place on both axes.
struct DrawnSeries {
    std::vector<std::vector<Point>> lines; ///< Two points or more each.
    std::vector<Point> marks;
    std::vector<Point> hollow_marks;
    double line_px = 2; ///< Thinner where points are close together.
};

/// False for a series without marks, and for one with a line whose marks would touch each other all along:
/// more of them than fit side by side.
[[nodiscard]] bool shows_marks(const Series& series, const Layout& layout);

/// Runs are broken where a point has no place on its axis; never is a line drawn over such a point. Lines
/// with more than four points a pixel keep the first, the last, the lowest and the highest of each pixel.
/// Points that stand alone and hollow ones have a mark whatever `shows_marks` says.
[[nodiscard]] DrawnSeries drawn(const Series& series, const Layout& layout);

} // namespace sumpbook::plot
