// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

namespace sumpbook::stats {

/// The shift between two groups of independent values, without assuming a shape for them.
struct GroupShift {
    double shift = 0;     ///< Hodges-Lehmann: median of all differences second - first.
    double shift_low = 0; ///< Exact Mann-Whitney interval of the shift.
    double shift_high = 0;
    double confidence = 0; ///< Of the interval, at least 0.95; below it only where the groups are too small
                           ///< to reach it, and the interval is the whole range of the differences.
    double p = 1;          ///< Two-sided permutation test.
    double smallest_p = 1; ///< What the most extreme split of so few values would give.
    bool by_ranks = false; ///< p is of the ranks: there are too many splits to try every one on the values.
};

/// Absent where a group is empty. p is exact: all splits of the values, by the difference of the means, up
/// to `most_arrangements`, else all splits of the mid-ranks; above 120 values in all the normal limit of the
/// ranks with tie correction. smallest_p = 2/C for groups of one size, else 1/C, C the number of splits. Ties
/// are taken as they are in the interval, which then holds a little more than it says.
///
/// SOURCE: permutation test: Fisher/Pitman; shift and interval: Hodges and Lehmann 1963, Hollander and
/// Wolfe, section 4.2 (from memory).
[[nodiscard]] std::optional<GroupShift> group_shift(const std::vector<double>& first,
                                                    const std::vector<double>& second);

} // namespace sumpbook::stats
