// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/stats/kendall_exact.h"

#include <algorithm>
#include <numeric>
#include <stdexcept>
#include <vector>

namespace sumpbook::stats {
namespace {

/// counts[k] = number of orders of n values with k inversions.
std::vector<std::uint64_t> inversion_counts(int n) {
    if (n < 1 || n > largest_exact_kendall) throw std::out_of_range("exact Kendall score: n");
    std::vector<std::uint64_t> counts{1};
    for (std::size_t size = 2; size <= static_cast<std::size_t>(n); ++size) {
        std::vector<std::uint64_t> next(counts.size() + size - 1, 0);
        for (std::size_t k = 0; k < counts.size(); ++k) {
            for (std::size_t added = 0; added < size; ++added)
                next[k + added] += counts[k];
        }
        counts = std::move(next);
    }
    return counts;
}

/// Orders with at most (largest score - s) / 2 inversions, all of them for s below the smallest score.
std::uint64_t reaching(const std::vector<std::uint64_t>& counts, int s) {
    const int largest = static_cast<int>(counts.size()) - 1;
    if (s > largest) return 0;
    const int inversions = std::min((largest - s) / 2, largest);
    return std::accumulate(counts.begin(), counts.begin() + inversions + 1, std::uint64_t{0});
}

double share(std::uint64_t orders, const std::vector<std::uint64_t>& counts) {
    const auto all = std::accumulate(counts.begin(), counts.end(), std::uint64_t{0});
    return static_cast<double>(orders) / static_cast<double>(all);
}

} // namespace

std::uint64_t kendall_orders_reaching(int n, int s) { return reaching(inversion_counts(n), s); }

double kendall_upper_tail(int n, int s) {
    const auto counts = inversion_counts(n);
    return share(reaching(counts, s), counts);
}

std::optional<int> kendall_critical(int n, double tail) {
    const auto counts = inversion_counts(n);
    const int largest = static_cast<int>(counts.size()) - 1;
    std::optional<int> critical;
    // from the largest score down, in steps of 2: scores of one n are all even or all odd
    for (int s = largest; s >= -largest && share(reaching(counts, s), counts) <= tail; s -= 2)
        critical = s;
    return critical;
}

} // namespace sumpbook::stats
