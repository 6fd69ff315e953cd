// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "reports/plot/layout.h"

namespace sumpbook::plot {

// Words about the picture stand outside the area of the data, so that they never lie on it: words of bands,
// of rules across and of spans to the right of it, words of upright rules above it.

/// The width the words on the right want, with the gap before them; 0 where there are none.
[[nodiscard]] double right_labels_width(const Plot& plot, Size size);
/// Adds them, pushed apart, with a leader where one had to move.
void place_right_labels(Layout& layout, const Plot& plot);

/// The height that words of upright rules take above the area, 0 where there are none.
[[nodiscard]] double flags_height(const Layout& layout, const Plot& plot);
/// Adds them with their poles.
void place_flags(Layout& layout, const Plot& plot);

} // namespace sumpbook::plot
