// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/stats/mann_kendall.h"

#include "model/stats/kendall_exact.h"

#include <boost/math/distributions/normal.hpp>

#include <algorithm>
#include <cmath>
#include <cstdlib>

namespace sumpbook::stats {
namespace {

/// Continuity correction: the score moves towards 0 by 1, half the distance between two scores.
double standardised(const KendallScore& score) {
    if (score.s == 0 || !(score.variance > 0)) return 0;
    const auto s = static_cast<double>(score.s);
    return (s > 0 ? s - 1 : s + 1) / std::sqrt(score.variance);
}

double two_sided(const KendallScore& score, double z) {
    if (score_is_exact(score)) {
        const double tail =
            kendall_upper_tail(static_cast<int>(score.points), static_cast<int>(std::abs(score.s)));
        return std::min(1.0, 2 * tail);
    }
    return 2 * boost::math::cdf(boost::math::complement(boost::math::normal{}, std::abs(z)));
}

} // namespace

bool score_is_exact(const KendallScore& score) {
    return score.tied_x == 0 && score.tied_y == 0 &&
           score.points <= static_cast<std::int64_t>(largest_exact_trend);
}

std::optional<MannKendall> mann_kendall(std::span<const double> xs, std::span<const double> ys) {
    const KendallScore score = kendall_score(xs, ys);
    if (xs.size() < fewest_for_trend) return std::nullopt;
    const double z = standardised(score);
    return MannKendall{score.s, score.variance, z, two_sided(score, z), score_is_exact(score)};
}

} // namespace sumpbook::stats
