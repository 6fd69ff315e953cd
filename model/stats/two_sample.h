// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/stats/paired.h"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>

namespace sumpbook::stats {

/// Most arrangements that are counted one by one; beyond it there is no exact test.
inline constexpr std::uint64_t most_arrangements = 5'000'000;

/// How many of all equally likely arrangements give a difference at least as large, either way, as the one
/// seen.
struct ExactTest {
    std::uint64_t as_far = 0;
    std::uint64_t all = 1;
    [[nodiscard]] double p_two_sided() const {
        return static_cast<double>(as_far) / static_cast<double>(all);
    }
};

/// Two groups of values: every way of dealing them to groups of these sizes, by the difference of the means.
/// Absent where a group is empty, and above `most_arrangements`.
///
/// SOURCE: R. A. Fisher's permutation test, counted in full; tested by full enumeration of published data.
[[nodiscard]] std::optional<ExactTest> permutation_test(std::span<const double> as,
                                                        std::span<const double> bs);
/// Pairs: every way of swapping the two of a pair, by the mean difference. Absent without a pair, and above
/// `most_arrangements`.
[[nodiscard]] std::optional<ExactTest> sign_flip_test(std::span<const double> as, std::span<const double> bs);

/// Smallest p the permutation test can reach with such groups: 2/C(n1 + n2, n1) for equal sizes, where the
/// mirrored arrangement is as far, else 1/C. Absent for an empty group.
[[nodiscard]] std::optional<double> smallest_p(std::size_t as, std::size_t bs);
/// The same for pairs: 2/2^n. Absent without a pair.
[[nodiscard]] std::optional<double> smallest_p_of_pairs(std::size_t pairs);

/// Standard deviation within two groups, their means apart; absent below 3 values in all, or an empty group.
[[nodiscard]] std::optional<double> pooled_sd(std::span<const double> as, std::span<const double> bs);

/// By how much the second group lies above the first: the median of all differences b - a, and where it
/// lies.
///
/// SOURCE: J. L. Hodges and E. L. Lehmann, Annals of Mathematical Statistics 34 (1963) 598; the interval by
/// the exact distribution of H. B. Mann and D. R. Whitney, ibid. 18 (1947) 50.
struct Shift {
    double shift = 0;
    Interval interval;
    double confidence = 0; ///< What is really reached: at least what was asked for, if `reached`.
    bool reached = true;   ///< False: even the whole range of differences is less sure than was asked for.
};
/// Absent for an empty group.
[[nodiscard]] std::optional<Shift> shift_between(std::span<const double> as, std::span<const double> bs,
                                                 double confidence);
/// P(U <= u) of the Mann-Whitney count of two groups that do not differ, without ties.
[[nodiscard]] double mann_whitney_lower_tail(std::size_t as, std::size_t bs, std::size_t u);

} // namespace sumpbook::stats
