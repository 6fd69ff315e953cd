// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>

namespace sumpbook::stats {

/// A range of values in whatever unit its source has; low <= high.
struct Interval {
    double low = 0;
    double high = 0;
    bool operator==(const Interval&) const = default;
};

/// Every function of this folder takes paired series as two spans of one length with finite values, any
/// unit, in any order unless it says otherwise. Anything else is a fault of the caller, not of the data:
/// std::invalid_argument.
void require_pairs(std::span<const double> xs, std::span<const double> ys);
void require_finite(std::span<const double> values);

} // namespace sumpbook::stats
