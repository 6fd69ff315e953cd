// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

namespace sumpbook::stats {

/// The shift between two groups of independent values of any size, without assuming a shape for them.
struct TwoGroups {
    double shift = 0;     ///< Hodges-Lehmann: median of all differences second - first.
    double shift_low = 0; ///< Mann-Whitney interval of the shift.
    double shift_high = 0;
    double confidence = 0; ///< Of the interval, at least 0.95; below it only where the groups are too small
                           ///< to reach it, and the interval is the whole range of the differences.
    double p = 1;          ///< Two-sided permutation test.
    double smallest_p = 1; ///< What the most extreme split of so few values would give.
    bool by_ranks = false; ///< p is of the ranks: there are too many splits to try every one on the values.
};

/// Absent where a group is empty. p is of every split of the values, by the difference of the means, while
/// they can be counted (two_sample.h); else of every split of the mid-ranks; above 120 values in all the
/// normal limit of the ranks with tie correction. The interval is exact up to 900 differences, beyond them
/// of the normal limit.
///
/// SOURCE: two_sample.h; normal limits: Hollander and Wolfe, Nonparametric Statistical Methods, sections 4.1
/// and 4.3 (from memory). The sizes are DESIGN.
[[nodiscard]] std::optional<TwoGroups> compare_two_groups(const std::vector<double>& first,
                                                          const std::vector<double>& second);

} // namespace sumpbook::stats
