// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/stats/two_sample.h"

#include "model/stats/median.h"

#include <boost/math/distributions/normal.hpp>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numeric>

namespace sumpbook::stats {
namespace {

constexpr double most_splits = 200'000;
constexpr std::size_t most_values_exact = 120;
constexpr double tail = 0.025; ///< Of a 95 % interval, each side.

double splits(std::size_t n1, std::size_t n2) {
    double count = 1;
    for (std::size_t k = 1; k <= n1; ++k)
        count = count * static_cast<double>(n2 + k) / static_cast<double>(k);
    return count;
}

/// Sums of every choice of n1 of the values, without making the choices: ways[k][sum] for whole numbers.
class SubsetSums {
public:
    SubsetSums(const std::vector<std::size_t>& values, std::size_t choose)
        : ways_(choose + 1) {
        const auto highest = std::accumulate(values.begin(), values.end(), std::size_t{0});
        for (auto& row : ways_)
            row.assign(highest + 1, 0.0);
        ways_[0][0] = 1;
        for (const auto value : values)
            add(value);
    }
    [[nodiscard]] const std::vector<double>& of_whole_choice() const { return ways_.back(); }

private:
    void add(std::size_t value) {
        for (std::size_t k = ways_.size() - 1; k > 0; --k) {
            for (std::size_t sum = ways_[k].size(); sum-- > value;)
                ways_[k][sum] += ways_[k - 1][sum - value];
        }
    }
    std::vector<std::vector<double>> ways_;
};

/// Twice the mid-rank of each value, the first group's first; whole numbers also with ties.
std::vector<std::size_t> doubled_ranks(const std::vector<double>& all) {
    std::vector<std::size_t> ranks;
    for (const double value : all) {
        const auto below = std::ranges::count_if(all, [&](double other) { return other < value; });
        const auto equal = std::ranges::count(all, value);
        ranks.push_back(static_cast<std::size_t>(2 * below + equal + 1));
    }
    return ranks;
}

/// Every choice of n1 of the values as the first group, by the distance of its sum from the expected one.
double p_of_values(std::vector<double> all, std::size_t n1) {
    const double expected = std::accumulate(all.begin(), all.end(), 0.0) * static_cast<double>(n1) /
                            static_cast<double>(all.size());
    const auto distance = [&](double sum) { return std::abs(sum - expected); };
    const double observed =
        distance(std::accumulate(all.begin(), all.begin() + static_cast<std::ptrdiff_t>(n1), 0.0));
    const double slack = 1e-9 * (std::abs(expected) + 1e-9); // equal sums differ in their last digits
    std::vector<bool> chosen(all.size(), false);
    std::fill(chosen.begin(), chosen.begin() + static_cast<std::ptrdiff_t>(n1), true);
    double as_far = 0;
    double tried = 0;
    do {
        double sum = 0;
        for (std::size_t i = 0; i < all.size(); ++i)
            sum += chosen[i] ? all[i] : 0.0;
        ++tried;
        if (distance(sum) >= observed - slack) ++as_far;
    } while (std::prev_permutation(chosen.begin(), chosen.end()));
    return as_far / tried;
}

/// The same of the doubled ranks. Sums are compared as whole numbers times the number of values.
double p_of_ranks(const std::vector<std::size_t>& ranks, std::size_t n1) {
    const auto total = std::accumulate(ranks.begin(), ranks.end(), std::size_t{0});
    const auto distance = [&](std::size_t sum) {
        const auto scaled = sum * ranks.size();
        const auto expected = total * n1;
        return scaled > expected ? scaled - expected : expected - scaled;
    };
    const auto observed = distance(
        std::accumulate(ranks.begin(), ranks.begin() + static_cast<std::ptrdiff_t>(n1), std::size_t{0}));
    const SubsetSums sums(ranks, n1);
    double as_far = 0;
    double all = 0;
    for (std::size_t sum = 0; sum < sums.of_whole_choice().size(); ++sum) {
        const double ways = sums.of_whole_choice()[sum];
        all += ways;
        if (distance(sum) >= observed) as_far += ways;
    }
    return as_far / all;
}

/// Normal limit of the rank sum; the spread is that of drawing n1 of these ranks, so ties are in it.
double p_of_many_ranks(const std::vector<std::size_t>& ranks, std::size_t n1) {
    const auto n = static_cast<double>(ranks.size());
    const double mean = std::accumulate(ranks.begin(), ranks.end(), 0.0) / n;
    double squares = 0;
    for (const auto rank : ranks)
        squares += (static_cast<double>(rank) - mean) * (static_cast<double>(rank) - mean);
    const auto first = static_cast<double>(n1);
    const double spread = std::sqrt(squares / n * first * (n - first) / (n - 1));
    if (spread <= 0) return 1;
    const double sum = std::accumulate(ranks.begin(), ranks.begin() + static_cast<std::ptrdiff_t>(n1), 0.0);
    const double off = std::max(0.0, std::abs(sum - first * mean) - 1); // half a rank, doubled
    return 2 * boost::math::cdf(boost::math::complement(boost::math::normal(), off / spread));
}

/// Largest c with P(U <= c - 1) at most `tail`, at least 1; and that probability.
struct Cut {
    std::size_t c = 1;
    double below = 0;
};

Cut exact_cut(std::size_t n1, std::size_t n2) {
    std::vector<std::size_t> ranks(n1 + n2);
    std::iota(ranks.begin(), ranks.end(), std::size_t{1});
    const SubsetSums sums(ranks, n1);
    const double all = splits(n1, n2);
    const std::size_t lowest = n1 * (n1 + 1) / 2;
    Cut cut{1, 1 / all};
    for (double below = cut.below; cut.c < n1 * n2; ++cut.c) {
        below += sums.of_whole_choice()[lowest + cut.c] / all;
        if (below > tail) break;
        cut.below = below;
    }
    return cut;
}

Cut normal_cut(std::size_t n1, std::size_t n2) {
    const auto a = static_cast<double>(n1);
    const auto b = static_cast<double>(n2);
    const double z = boost::math::quantile(boost::math::complement(boost::math::normal(), tail));
    const double c = a * b / 2 - z * std::sqrt(a * b * (a + b + 1) / 12);
    return {static_cast<std::size_t>(std::max(1.0, std::floor(c))), tail};
}

void add_shift(TwoSampleResult& result, const std::vector<double>& first, const std::vector<double>& second) {
    std::vector<double> differences;
    for (const double a : first) {
        for (const double b : second)
            differences.push_back(b - a);
    }
    std::ranges::sort(differences);
    result.shift = median(differences).value_or(0);
    const bool few = first.size() + second.size() <= most_values_exact;
    const Cut cut = few ? exact_cut(first.size(), second.size()) : normal_cut(first.size(), second.size());
    result.shift_low = differences[cut.c - 1];
    result.shift_high = differences[differences.size() - cut.c];
    result.confidence = 1 - 2 * cut.below;
}

} // namespace

std::optional<TwoSampleResult> compare_two_samples(const std::vector<double>& first,
                                                   const std::vector<double>& second) {
    if (first.empty() || second.empty()) return std::nullopt;
    TwoSampleResult result;
    add_shift(result, first, second);
    const double count = splits(first.size(), second.size());
    result.smallest_p = std::min(1.0, (first.size() == second.size() ? 2 : 1) / count);
    std::vector<double> all = first;
    all.insert(all.end(), second.begin(), second.end());
    result.by_ranks = count > most_splits;
    if (!result.by_ranks)
        result.p = p_of_values(all, first.size());
    else if (all.size() <= most_values_exact)
        result.p = p_of_ranks(doubled_ranks(all), first.size());
    else
        result.p = p_of_many_ranks(doubled_ranks(all), first.size());
    return result;
}

} // namespace sumpbook::stats
