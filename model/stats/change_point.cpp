// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/stats/change_point.h"

#include "model/stats/paired.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>

namespace sumpbook::stats {
namespace {

/// How many of the values lie below `value` less how many lie above.
std::int64_t rank_balance(std::span<const double> values, double value) {
    std::int64_t balance = 0;
    for (const double other : values)
        balance += (value > other) - (value < other);
    return balance;
}

} // namespace

std::optional<ChangePoint> change_point(std::span<const double> values) {
    require_finite(values);
    if (values.size() < fewest_for_change) return std::nullopt;
    ChangePoint change;
    // U after t values is the sum of their rank balances: pairs inside the first part cancel
    std::int64_t u = 0;
    for (std::size_t i = 0; i + 1 < values.size(); ++i) {
        u += rank_balance(values, values[i]);
        if (std::abs(u) > change.k || change.last_before == 0) {
            change.k = std::abs(u);
            change.last_before = i + 1;
        }
    }
    const auto n = static_cast<double>(values.size());
    const auto k = static_cast<double>(change.k);
    change.p = std::min(1.0, 2 * std::exp(-6 * k * k / (n * n * n + n * n)));
    return change;
}

} // namespace sumpbook::stats
