// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/stats/paired.h"

#include <cstddef>
#include <optional>
#include <span>

namespace sumpbook::stats {

/// The line whose slope is the median of the slopes between all pairs of points, pairs of equal x
/// skipped: a few wild values do not turn it.
///
/// SOURCE: P. K. Sen, Journal of the American Statistical Association 63 (1968) 1379.
struct TheilSen {
    double slope = 0;
    double intercept = 0;          ///< median(y) - slope median(x): the line through the medians.
    double residual_intercept = 0; ///< median(y - slope x): half of the points above, half below.
    std::size_t slopes = 0;        ///< Pairs with different x.
};

/// Absent below 4 points and where every x is the same.
[[nodiscard]] std::optional<TheilSen> theil_sen(std::span<const double> xs, std::span<const double> ys);

/// Where the true slope lies.
struct SlopeInterval {
    Interval slope;
    double confidence = 0; ///< What is really reached; with few points more than was asked for.
    bool exact = false;
};

/// Up to 10 untied points: C = the smallest score with P(S >= C) <= (1 - confidence)/2, the slopes of rank
/// (N - C)/2 + 1 from both ends of the N sorted slopes, confidence 1 - 2 P(S >= C). Else the slopes at rank
/// (N - z sd)/2 and, counted the same way from the other end, interpolated, at the confidence asked for.
/// Absent below 4 points or where the ranks leave the slopes there are.
///
/// SOURCE: Sen 1968 (exact); USEPA Unified Guidance 2009, EPA 530/R-09-007, section 17.3.3 (ranks).
[[nodiscard]] std::optional<SlopeInterval> slope_interval(std::span<const double> xs,
                                                          std::span<const double> ys, double confidence);

} // namespace sumpbook::stats
