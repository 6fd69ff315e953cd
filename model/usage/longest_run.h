// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

namespace sumpbook::usage {

/// A value on a day; days counted from any fixed day.
struct DatedValue {
    std::int64_t day = 0;
    std::int64_t value = 0;
    bool operator==(const DatedValue&) const = default;
};

/// True where the step from one value to a later one exceeds `most_a_day` for every day between them,
/// at least one day counted (strictly above is a leap).
[[nodiscard]] bool is_leap(const DatedValue& from, const DatedValue& to, std::int64_t most_a_day);

/// Positions of the longest non-falling run, in order. Of several longest runs the one with the fewest
/// leaps, then the one that keeps the earliest entries: at the first place where two runs differ the
/// earlier position wins (numbers.md 1.2). Values stand in order of their days. O(n log n) where few
/// values contradict each other; at worst a quarter of n squared comparisons.
[[nodiscard]] std::vector<std::size_t> longest_run(const std::vector<DatedValue>& values,
                                                   std::int64_t most_a_day);

} // namespace sumpbook::usage
