// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <optional>

namespace sumpbook::stats {

/// Power asked for, and the two-sided level of the test (numbers.md 6.10).
inline constexpr double wanted_power = 0.80;
inline constexpr double usual_level = 0.05;
/// Groups larger than this are not looked into.
inline constexpr std::size_t largest_group = 1000;

/// Chance that a two-sample t test of two groups of n finds a shift of `shift_over_sd` standard deviations,
/// two-sided. n from 2; fewer: std::out_of_range.
///
/// SOURCE: the noncentral t distribution with 2n - 2 degrees of freedom and noncentrality
/// shift x sqrt(n/2); tested on a published table of power.
[[nodiscard]] double two_sample_power(std::size_t n, double shift_over_sd, double level = usual_level);

/// Smallest n in each group whose power is 0.80; absent where 1 000 do not reach it, as for no shift at all.
[[nodiscard]] std::optional<std::size_t> group_size_needed(double shift_over_sd);

} // namespace sumpbook::stats
