// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/stats/control_limits.h"

#include "model/stats/paired.h"

#include <cmath>
#include <numeric>

namespace sumpbook::stats {
namespace {

constexpr double d2_for_two = 1.128;
constexpr double d4_for_two = 3.267;

double mean_moving_range(std::span<const double> values) {
    double sum = 0;
    for (std::size_t i = 1; i < values.size(); ++i)
        sum += std::abs(values[i] - values[i - 1]);
    return sum / static_cast<double>(values.size() - 1);
}

} // namespace

std::optional<IndividualsLimits> individuals_limits(std::span<const double> values) {
    require_finite(values);
    if (values.size() < fewest_for_limits) return std::nullopt;
    IndividualsLimits limits;
    limits.mean = std::accumulate(values.begin(), values.end(), 0.0) / static_cast<double>(values.size());
    limits.mean_moving_range = mean_moving_range(values);
    limits.lower = limits.mean - 3 * limits.mean_moving_range / d2_for_two;
    limits.upper = limits.mean + 3 * limits.mean_moving_range / d2_for_two;
    limits.moving_range_upper = d4_for_two * limits.mean_moving_range;
    return limits;
}

} // namespace sumpbook::stats
