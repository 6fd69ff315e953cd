// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <vector>

namespace sumpbook::cost {

/// What the sums of many paths come to, in minor units (numbers.md 5.6): the mean rounded half to even, and
/// the sums not passed in 10, 50 and 90 of 100 paths, each the ceil(qN)-th smallest.
struct Spread {
    std::int64_t mean_minor = 0;
    std::int64_t p10_minor = 0;
    std::int64_t p50_minor = 0;
    std::int64_t p90_minor = 0;
    bool operator==(const Spread&) const = default;
};

/// At least one sum.
[[nodiscard]] Spread spread_of(std::vector<std::int64_t> sums);
/// The share of sums strictly above an amount.
[[nodiscard]] double chance_above(const std::vector<std::int64_t>& sums, std::int64_t minor);
/// A twelfth, rounded half to even: what to put aside each month for a year's 90 % amount.
[[nodiscard]] std::int64_t twelfth(std::int64_t minor);

} // namespace sumpbook::cost
