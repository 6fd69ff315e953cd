// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "reports/plot/layout.h"

namespace sumpbook::plot {

/// A sample and its words.
struct LegendEntry {
    Key key; ///< Its box is not set.
    std::string text;
};

/// One entry a label, in the order drawn, one for hollow marks, and what spans and their marks say. A single
/// series needs no legend: empty.
[[nodiscard]] std::vector<LegendEntry> legend_entries(const Plot& plot);

/// The entries in rows from `top` on, between `left` and `right`; adds keys and labels to the layout and
/// gives the height they take.
double place_legend(Layout& layout, const std::vector<LegendEntry>& entries, double left, double right,
                    double top);

} // namespace sumpbook::plot
