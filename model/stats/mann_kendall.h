// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/stats/kendall.h"

#include <cstdint>
#include <optional>
#include <span>

namespace sumpbook::stats {

/// Fewest points that may be called a trend (DESIGN); with 4 the two-sided p cannot fall under 1/12.
inline constexpr std::size_t fewest_for_trend = 4;
/// Up to here p is counted exactly where nothing is tied, above it the normal curve serves.
inline constexpr std::size_t largest_exact_trend = 10;

/// True where the exact distribution of the score applies: no ties and at most 10 points.
[[nodiscard]] bool score_is_exact(const KendallScore& score);

/// Whether y keeps rising or falling along x, by rank only. Pairs of equal x are skipped.
struct MannKendall {
    std::int64_t s = 0;     ///< Above 0: rising.
    double variance = 0;    ///< Of s under chance, corrected for ties.
    double z = 0;           ///< (|s| - 1)/sqrt(variance) with the sign of s; 0 for s = 0.
    double p_two_sided = 1; ///< Chance of a score at least as far from 0 when there is no trend.
    bool exact = false;     ///< p counted over all orders rather than from the normal curve.
};

/// Absent below 4 points. Exact p up to 10 untied points, else normal with tie correction and continuity
/// correction; 1 where everything is tied.
///
/// SOURCE: USEPA Unified Guidance 2009, EPA 530/R-09-007, section 17.3.2; exact p: all orders equally
/// likely.
[[nodiscard]] std::optional<MannKendall> mann_kendall(std::span<const double> xs, std::span<const double> ys);

} // namespace sumpbook::stats
