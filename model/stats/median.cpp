// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/stats/median.h"

#include <algorithm>
#include <cstddef>

namespace sumpbook::stats {

std::optional<double> median(std::vector<double> values) {
    if (values.empty()) return std::nullopt;
    std::sort(values.begin(), values.end());
    const std::size_t upper = values.size() / 2;
    if (values.size() % 2 == 1) return values[upper];
    return values[upper - 1] + (values[upper] - values[upper - 1]) / 2;
}

} // namespace sumpbook::stats
