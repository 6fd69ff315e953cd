// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "reports/plot/plot.h"

#include <string>
#include <vector>

namespace sumpbook::plot {

/// A position on an axis that is marked, and what stands beside it; an empty label is a mark alone.
struct Tick {
    double at = 0; ///< In the unit of the axis, also on logarithmic axes.
    std::string label;
    bool operator==(const Tick&) const = default;
};

/// A stretch of an axis; from < to after `nice`.
struct Range {
    double from = 0;
    double to = 1;
    bool operator==(const Range&) const = default;
};

/// The step of 1, 2 or 5 times a power of ten that gives at most `at_most` marks over `length` (> 0), and the
/// decimals its multiples need.
struct Step {
    double size = 1;
    int decimals = 0;
};
[[nodiscard]] Step nice_step(double length, int at_most);

/// Multiples of a nice step from `from` to `to`, both included where they are multiples; at most `at_most`,
/// and at least one where `at_most` is 3 or more.
[[nodiscard]] std::vector<Tick> linear_ticks(Range range, int at_most);
/// Powers of ten; with 2 and 5 between them where they still fit. Below 0.001 and from 10^6 on the labels
/// are grouped digits as well. Ends that are not above 0: no ticks.
[[nodiscard]] std::vector<Tick> logarithmic_ticks(Range range, int at_most);
/// First days of days, weeks (Mondays), months, quarters, years, the finest that fits: "3 Mar", "3 Mar 2026"
/// for the first tick and where the year changes, "Mar 2026", "2026".
[[nodiscard]] std::vector<Tick> date_ticks(Range range, int at_most);

/// The range widened to what an axis of this kind should show: to the next mark, or by something where it
/// is a single position. An end the axis gives stays as it is.
[[nodiscard]] Range nice(const Axis& axis, Range data, int at_most);

/// Whether labels stand beside each other or on top of each other.
enum class Direction { across, up };

/// The ticks of an axis `length_px` long in a font of `font_px`: as many as fit without their labels coming
/// closer than half an em. Category labels are shortened with an ellipsis, or only each second, third ... one
/// is written; there is a tick for every category all the same.
[[nodiscard]] std::vector<Tick> ticks(const Axis& axis, Range range, Direction direction, double length_px,
                                      double font_px);
/// As many marks as an axis of this length should have at most.
[[nodiscard]] int most_ticks(Direction direction, double length_px, double font_px);

} // namespace sumpbook::plot
