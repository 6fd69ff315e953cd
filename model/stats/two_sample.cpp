// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/stats/two_sample.h"

#include "model/stats/median.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <vector>

namespace sumpbook::stats {
namespace {

/// Sums that differ by less than this share of their size are one and the same.
constexpr double same_share = 1e-9;

double sum_of(std::span<const double> values) { return std::accumulate(values.begin(), values.end(), 0.0); }
double mean_of_span(std::span<const double> values) {
    return sum_of(values) / static_cast<double>(values.size());
}

/// n over k, as a double: exact up to 2^53, and only compared beyond.
double ways(std::size_t n, std::size_t k) {
    double result = 1;
    for (std::size_t i = 1; i <= k; ++i)
        result = std::round(result * static_cast<double>(n - k + i) / static_cast<double>(i));
    return result;
}

double size_of(std::span<const double> values) {
    double size = 0;
    for (const double value : values)
        size += std::abs(value);
    return size;
}

/// The next way to choose, in the order of the digits; false after the last.
bool next_choice(std::vector<std::size_t>& chosen, std::size_t n) {
    const std::size_t k = chosen.size();
    for (std::size_t i = k; i-- > 0;) {
        if (chosen[i] == n - k + i) continue;
        ++chosen[i];
        for (std::size_t j = i + 1; j < k; ++j)
            chosen[j] = chosen[j - 1] + 1;
        return true;
    }
    return false;
}

double squares_about_mean(std::span<const double> values) {
    const double mean = mean_of_span(values);
    double sum = 0;
    for (const double value : values)
        sum += (value - mean) * (value - mean);
    return sum;
}

/// Number of orders of two groups by the Mann-Whitney count, from 0 to as x bs.
std::vector<double> mann_whitney_orders(std::size_t as, std::size_t bs) {
    std::vector<std::vector<double>> of_bs(bs + 1, std::vector<double>{1});
    for (std::size_t i = 1; i <= as; ++i) {
        std::vector<std::vector<double>> next{{1}};
        for (std::size_t j = 1; j <= bs; ++j) {
            std::vector<double> orders(i * j + 1, 0);
            for (std::size_t u = 0; u < of_bs[j].size(); ++u)
                orders[u + j] += of_bs[j][u]; // a value of the first group is the largest: above all j
            for (std::size_t u = 0; u < next[j - 1].size(); ++u)
                orders[u] += next[j - 1][u];
            next.push_back(std::move(orders));
        }
        of_bs = std::move(next);
    }
    return of_bs[bs];
}

} // namespace

std::optional<ExactTest> permutation_test(std::span<const double> as, std::span<const double> bs) {
    require_finite(as);
    require_finite(bs);
    if (as.empty() || bs.empty()) return std::nullopt;
    const std::size_t n = as.size() + bs.size();
    if (ways(n, as.size()) > static_cast<double>(most_arrangements)) return std::nullopt;
    std::vector<double> all(as.begin(), as.end());
    all.insert(all.end(), bs.begin(), bs.end());
    // The difference of the means grows with the distance of the first group's sum from what is expected.
    const double expected = sum_of(all) * static_cast<double>(as.size()) / static_cast<double>(n);
    const double seen = std::abs(sum_of(as) - expected) - same_share * size_of(all);
    std::vector<std::size_t> chosen(as.size());
    std::iota(chosen.begin(), chosen.end(), std::size_t{0});
    ExactTest test{0, 0};
    do {
        double sum = 0;
        for (const std::size_t index : chosen)
            sum += all[index];
        ++test.all;
        test.as_far += std::abs(sum - expected) >= seen ? 1U : 0U;
    } while (next_choice(chosen, n));
    return test;
}

std::optional<ExactTest> sign_flip_test(std::span<const double> as, std::span<const double> bs) {
    require_pairs(as, bs);
    if (as.empty() || as.size() > 22) return std::nullopt; // 2^22 is the last within most_arrangements
    std::vector<double> differences;
    for (std::size_t i = 0; i < as.size(); ++i)
        differences.push_back(bs[i] - as[i]);
    const double seen = std::abs(sum_of(differences)) - same_share * size_of(differences);
    ExactTest test{0, std::uint64_t{1} << as.size()};
    for (std::uint64_t flips = 0; flips < test.all; ++flips) {
        double sum = 0;
        for (std::size_t i = 0; i < differences.size(); ++i)
            sum += (flips >> i & 1U) != 0 ? -differences[i] : differences[i];
        test.as_far += std::abs(sum) >= seen ? 1U : 0U;
    }
    return test;
}

std::optional<double> smallest_p(std::size_t as, std::size_t bs) {
    if (as == 0 || bs == 0) return std::nullopt;
    return (as == bs ? 2 : 1) / ways(as + bs, as);
}

std::optional<double> smallest_p_of_pairs(std::size_t pairs) {
    if (pairs == 0) return std::nullopt;
    return 2 * std::pow(0.5, static_cast<double>(pairs));
}

std::optional<double> pooled_sd(std::span<const double> as, std::span<const double> bs) {
    if (as.empty() || bs.empty() || as.size() + bs.size() < 3) return std::nullopt;
    const double squares = squares_about_mean(as) + squares_about_mean(bs);
    return std::sqrt(squares / static_cast<double>(as.size() + bs.size() - 2));
}

double mann_whitney_lower_tail(std::size_t as, std::size_t bs, std::size_t u) {
    const auto orders = mann_whitney_orders(as, bs);
    double up_to = 0;
    double all = 0;
    for (std::size_t i = 0; i < orders.size(); ++i) {
        all += orders[i];
        if (i <= u) up_to += orders[i];
    }
    return up_to / all;
}

std::optional<Shift> shift_between(std::span<const double> as, std::span<const double> bs,
                                   double confidence) {
    if (as.empty() || bs.empty()) return std::nullopt;
    std::vector<double> differences;
    for (const double b : bs) {
        for (const double a : as)
            differences.push_back(b - a);
    }
    std::sort(differences.begin(), differences.end());
    const double tail = (1 - confidence) / 2;
    // The differences of rank c and c from the end, c the largest with P(U < c) within the tail.
    const auto orders = mann_whitney_orders(as.size(), bs.size());
    const double all = sum_of(orders);
    double outside = orders[0] / all; // P(U < c)
    std::size_t c = 1;
    const std::size_t middle = (differences.size() + 1) / 2;
    for (; c < middle && outside + orders[c] / all <= tail; ++c)
        outside += orders[c] / all;
    Shift result;
    result.shift = median(differences).value();
    result.reached = outside <= tail;
    result.interval = {differences[c - 1], differences[differences.size() - c]};
    result.confidence = std::max(0.0, 1 - 2 * outside);
    return result;
}

} // namespace sumpbook::stats
