// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/stats/line_fit.h"

#include <optional>

namespace sumpbook::stats {

/// Where along x, from 0 on, a series comes to a level: earliest and latest by the bounds round its line,
/// middle by the line itself. Absent: never.
struct Reaching {
    std::optional<double> earliest;
    std::optional<double> middle;
    std::optional<double> latest;
};

/// Where the line falls (`falling`) or rises to the level, and where its prediction bounds of the given
/// confidence do: the bound nearer the level is the earliest, the other one the latest. A level already
/// passed at 0 is reached at 0.
///
/// SOURCE: the roots of (at(x) - level)^2 = t^2 s^2 (1 + 1/n + (x - mean)^2/Sxx), the bounds of
/// `prediction_interval`.
[[nodiscard]] Reaching reaching(const LineFit& fit, double level, bool falling, double confidence);

} // namespace sumpbook::stats
