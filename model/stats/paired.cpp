// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/stats/paired.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace sumpbook::stats {

void require_finite(std::span<const double> values) {
    if (!std::all_of(values.begin(), values.end(), [](double value) { return std::isfinite(value); })) {
        throw std::invalid_argument("a value is not a finite number");
    }
}

void require_pairs(std::span<const double> xs, std::span<const double> ys) {
    if (xs.size() != ys.size()) throw std::invalid_argument("paired series of different length");
    require_finite(xs);
    require_finite(ys);
}

} // namespace sumpbook::stats
