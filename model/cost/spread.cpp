// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/cost/spread.h"

#include "model/quantity/wide.h"

#include <algorithm>

namespace sumpbook::cost {

Spread spread_of(std::vector<std::int64_t> sums) {
    std::ranges::sort(sums);
    const std::size_t n = sums.size();
    const auto quantile = [&](std::size_t percent) { return sums[(percent * n + 99) / 100 - 1]; };
    Wide total = 0;
    for (const auto sum : sums)
        total += sum;
    return {static_cast<std::int64_t>(divide_half_even(total, static_cast<Wide>(n))), quantile(10),
            quantile(50), quantile(90)};
}

double chance_above(const std::vector<std::int64_t>& sums, std::int64_t minor) {
    const auto above = std::ranges::count_if(sums, [minor](std::int64_t sum) { return sum > minor; });
    return static_cast<double>(above) / static_cast<double>(sums.size());
}

std::int64_t twelfth(std::int64_t minor) { return static_cast<std::int64_t>(divide_half_even(minor, 12)); }

} // namespace sumpbook::cost
