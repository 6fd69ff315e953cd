// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QChart>

#include <string>
#include <vector>

namespace sumpbook::test {

/// What is wrong with a chart as drawn, one sentence each: it has no data (no series with a point, no bar, no
/// span drawn); a series with points of which no pixel is to be seen; texts that lie on each other or leave
/// the chart. Looks at the items of the scene and at the pixels, so it judges any chart of Qt. The chart goes
/// into a scene of its own for the look and comes out again.
[[nodiscard]] std::vector<std::string> drawn_faults(QChart& chart);

} // namespace sumpbook::test
