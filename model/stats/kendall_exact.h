// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <optional>

namespace sumpbook::stats {

/// The exact distribution of Kendall's score S over the n! equally likely orders of n untied values.
/// n from 1 to `largest_exact_kendall` (20! still fits 64 bits); any other n: std::out_of_range.
///
/// SOURCE: orders by number of inversions, counts(n) = sums of n neighbouring counts(n - 1); S = n(n-1)/2
/// - 2 x inversions.
inline constexpr int largest_exact_kendall = 20;

/// Number of orders whose score is s or more.
[[nodiscard]] std::uint64_t kendall_orders_reaching(int n, int s);
/// P(S >= s).
[[nodiscard]] double kendall_upper_tail(int n, int s);
/// Smallest possible score whose upper tail is at most `tail`; absent where even the largest is likelier.
[[nodiscard]] std::optional<int> kendall_critical(int n, double tail);

} // namespace sumpbook::stats
