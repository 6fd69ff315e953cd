// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/stats/kendall.h"

#include <algorithm>
#include <cmath>
#include <vector>

namespace sumpbook::stats {
namespace {

/// Sums over groups of t equal values, as the variance needs them.
struct TieSums {
    double pairs = 0;   ///< Sum of t(t-1).
    double triples = 0; ///< Sum of t(t-1)(t-2).
    double spread = 0;  ///< Sum of t(t-1)(2t+5).
};

TieSums tie_sums(std::span<const double> values) {
    std::vector<double> sorted(values.begin(), values.end());
    std::sort(sorted.begin(), sorted.end());
    TieSums sums;
    for (auto group = sorted.begin(); group != sorted.end();) {
        const auto end = std::upper_bound(group, sorted.end(), *group);
        const auto t = static_cast<double>(end - group);
        sums.pairs += t * (t - 1);
        sums.triples += t * (t - 1) * (t - 2);
        sums.spread += t * (t - 1) * (2 * t + 5);
        group = end;
    }
    return sums;
}

double score_variance(std::span<const double> xs, std::span<const double> ys) {
    const auto n = static_cast<double>(xs.size());
    if (n < 2) return 0;
    const TieSums x = tie_sums(xs);
    const TieSums y = tie_sums(ys);
    double variance = (n * (n - 1) * (2 * n + 5) - x.spread - y.spread) / 18;
    variance += x.pairs * y.pairs / (2 * n * (n - 1));
    if (n > 2) variance += x.triples * y.triples / (9 * n * (n - 1) * (n - 2));
    return variance;
}

int sign(double value) { return (value > 0) - (value < 0); }

} // namespace

std::optional<double> KendallScore::tau_a() const {
    if (pairs == 0) return std::nullopt;
    return static_cast<double>(s) / static_cast<double>(pairs);
}

std::optional<double> KendallScore::tau_b() const {
    const auto untied = static_cast<double>(pairs - tied_x) * static_cast<double>(pairs - tied_y);
    if (!(untied > 0)) return std::nullopt;
    return static_cast<double>(s) / std::sqrt(untied);
}

KendallScore kendall_score(std::span<const double> xs, std::span<const double> ys) {
    require_pairs(xs, ys);
    KendallScore score;
    score.points = static_cast<std::int64_t>(xs.size());
    score.pairs = score.points * (score.points - 1) / 2;
    for (std::size_t i = 0; i < xs.size(); ++i) {
        for (std::size_t j = i + 1; j < xs.size(); ++j) {
            const int x = sign(xs[j] - xs[i]);
            const int y = sign(ys[j] - ys[i]);
            score.s += x * y;
            score.tied_x += x == 0;
            score.tied_y += y == 0;
        }
    }
    score.variance = score_variance(xs, ys);
    return score;
}

} // namespace sumpbook::stats
