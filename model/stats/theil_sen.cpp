// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/stats/theil_sen.h"

#include "model/stats/kendall_exact.h"
#include "model/stats/mann_kendall.h"
#include "model/stats/median.h"

#include <boost/math/distributions/normal.hpp>

#include <algorithm>
#include <cmath>
#include <vector>

namespace sumpbook::stats {
namespace {

std::vector<double> sorted_slopes(std::span<const double> xs, std::span<const double> ys) {
    std::vector<double> slopes;
    for (std::size_t i = 0; i < xs.size(); ++i) {
        for (std::size_t j = i + 1; j < xs.size(); ++j) {
            if (xs[i] != xs[j]) slopes.push_back((ys[j] - ys[i]) / (xs[j] - xs[i]));
        }
    }
    std::sort(slopes.begin(), slopes.end());
    return slopes;
}

/// The slope at a rank counted from 1, between two slopes in proportion; absent outside 1..N.
std::optional<double> at_rank(const std::vector<double>& slopes, double rank) {
    if (!(rank >= 1 && rank <= static_cast<double>(slopes.size()))) return std::nullopt;
    const double below = std::floor(rank);
    const auto index = static_cast<std::size_t>(below) - 1;
    if (rank == below) return slopes[index];
    return slopes[index] + (rank - below) * (slopes[index + 1] - slopes[index]);
}

std::optional<SlopeInterval> exact_interval(const std::vector<double>& slopes, int points,
                                            double confidence) {
    const auto critical = kendall_critical(points, (1 - confidence) / 2);
    if (!critical) return std::nullopt;
    const auto all = static_cast<double>(slopes.size());
    const double rank = (all - *critical) / 2 + 1;
    const auto low = at_rank(slopes, rank);
    const auto high = at_rank(slopes, all + 1 - rank);
    if (!low || !high || *low > *high) return std::nullopt;
    return SlopeInterval{{*low, *high}, 1 - 2 * kendall_upper_tail(points, *critical), true};
}

std::optional<SlopeInterval> normal_interval(const std::vector<double>& slopes, double variance,
                                             double confidence) {
    const double z =
        boost::math::quantile(boost::math::complement(boost::math::normal{}, (1 - confidence) / 2));
    const auto all = static_cast<double>(slopes.size());
    const double reach = z * std::sqrt(variance);
    const auto low = at_rank(slopes, (all - reach) / 2);
    const auto high = at_rank(slopes, (all + reach) / 2 + 1);
    if (!low || !high) return std::nullopt;
    return SlopeInterval{{*low, *high}, confidence, false};
}

} // namespace

std::optional<TheilSen> theil_sen(std::span<const double> xs, std::span<const double> ys) {
    require_pairs(xs, ys);
    if (xs.size() < fewest_for_trend) return std::nullopt;
    const auto slopes = sorted_slopes(xs, ys);
    const auto slope = median(slopes);
    if (!slope) return std::nullopt;
    std::vector<double> rests;
    for (std::size_t i = 0; i < xs.size(); ++i)
        rests.push_back(ys[i] - *slope * xs[i]);
    const double middle_x = median({xs.begin(), xs.end()}).value();
    const double middle_y = median({ys.begin(), ys.end()}).value();
    return TheilSen{*slope, middle_y - *slope * middle_x, median(std::move(rests)).value(), slopes.size()};
}

std::optional<SlopeInterval> slope_interval(std::span<const double> xs, std::span<const double> ys,
                                            double confidence) {
    const KendallScore score = kendall_score(xs, ys);
    if (xs.size() < fewest_for_trend) return std::nullopt;
    const auto slopes = sorted_slopes(xs, ys);
    if (score_is_exact(score)) return exact_interval(slopes, static_cast<int>(score.points), confidence);
    return normal_interval(slopes, score.variance, confidence);
}

} // namespace sumpbook::stats
