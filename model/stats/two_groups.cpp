// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/stats/two_groups.h"

#include "model/stats/median.h"
#include "model/stats/two_sample.h"

#include <boost/math/distributions/normal.hpp>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numeric>

namespace sumpbook::stats {
namespace {

constexpr std::size_t most_values_exact = 120;
constexpr std::size_t most_differences_exact = 900;
constexpr double wanted_confidence = 0.95;

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

/// Every choice of n1 of the doubled ranks as the first group, by the distance of its sum from the expected
/// one. Sums are compared as whole numbers times the number of values.
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

void add_large_shift(TwoGroups& result, const std::vector<double>& first, const std::vector<double>& second) {
    std::vector<double> differences;
    for (const double a : first) {
        for (const double b : second)
            differences.push_back(b - a);
    }
    std::ranges::sort(differences);
    const auto n1 = static_cast<double>(first.size());
    const auto n2 = static_cast<double>(second.size());
    const double z =
        boost::math::quantile(boost::math::complement(boost::math::normal(), (1 - wanted_confidence) / 2));
    const double cut = n1 * n2 / 2 - z * std::sqrt(n1 * n2 * (n1 + n2 + 1) / 12);
    const auto c = static_cast<std::size_t>(std::max(1.0, std::floor(cut)));
    result.shift = median(differences).value_or(0);
    result.shift_low = differences[c - 1];
    result.shift_high = differences[differences.size() - c];
    result.confidence = wanted_confidence;
}

void add_shift(TwoGroups& result, const std::vector<double>& first, const std::vector<double>& second) {
    if (first.size() * second.size() > most_differences_exact) return add_large_shift(result, first, second);
    const auto between = shift_between(first, second, wanted_confidence).value();
    result.shift = between.shift;
    result.shift_low = between.interval.low;
    result.shift_high = between.interval.high;
    result.confidence = between.confidence;
}

double p_by_ranks(const std::vector<double>& first, const std::vector<double>& second) {
    std::vector<double> all = first;
    all.insert(all.end(), second.begin(), second.end());
    const auto ranks = doubled_ranks(all);
    return all.size() <= most_values_exact ? p_of_ranks(ranks, first.size())
                                           : p_of_many_ranks(ranks, first.size());
}

} // namespace

std::optional<TwoGroups> compare_two_groups(const std::vector<double>& first,
                                            const std::vector<double>& second) {
    if (first.empty() || second.empty()) return std::nullopt;
    TwoGroups result;
    add_shift(result, first, second);
    result.smallest_p = std::min(1.0, smallest_p(first.size(), second.size()).value_or(1));
    const auto counted = permutation_test(first, second);
    result.by_ranks = !counted;
    result.p = counted ? counted->p_two_sided() : p_by_ranks(first, second);
    return result;
}

} // namespace sumpbook::stats
