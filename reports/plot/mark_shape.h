// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "reports/plot/plot.h"

#include <vector>

namespace sumpbook::plot {

/// A corner of a mark about 0, 0 that reaches from -1 to 1 both ways; y downwards.
struct Corner {
    double x = 0;
    double y = 0;
};

/// The outline of a mark; empty for a circle and for Mark::none.
[[nodiscard]] std::vector<Corner> corners(Mark mark);

/// How wide a mark is drawn for all marks to look equally large, in widths of a circle. DESIGN.
[[nodiscard]] double mark_share(Mark mark);

} // namespace sumpbook::plot
