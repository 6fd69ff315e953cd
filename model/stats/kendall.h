// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/stats/paired.h"

#include <cstdint>
#include <optional>
#include <span>

namespace sumpbook::stats {

/// How far two paired series rise together, counted over all pairs of points (Kendall's score).
struct KendallScore {
    std::int64_t points = 0;
    std::int64_t s = 0;      ///< Pairs that rise together less pairs that run against each other.
    std::int64_t pairs = 0;  ///< points (points - 1) / 2.
    std::int64_t tied_x = 0; ///< Pairs with equal x; they add nothing to s.
    std::int64_t tied_y = 0; ///< Pairs with equal y; they add nothing to s.
    double variance = 0;     ///< Of s when nothing but chance is at work, ties in x and y allowed for.

    /// s over all pairs; absent below 2 points.
    [[nodiscard]] std::optional<double> tau_a() const;
    /// s over the geometric mean of the pairs untied in x and in y; absent where either is 0.
    [[nodiscard]] std::optional<double> tau_b() const;
};

/// SOURCE: M. G. Kendall, Rank Correlation Methods, for the variance with ties in both series (from
/// memory); with ties in y only it is the one of USEPA Unified Guidance 2009, EPA 530/R-09-007, section
/// 17.3.2, tested on its examples.
[[nodiscard]] KendallScore kendall_score(std::span<const double> xs, std::span<const double> ys);

} // namespace sumpbook::stats
