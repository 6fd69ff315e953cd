// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/usage/longest_run.h"

#include "tests/catch.h"

#include <rapidcheck.h>

#include <algorithm>
#include <optional>
#include <tuple>

using namespace sumpbook::usage;

namespace {

using Run = std::vector<std::size_t>;

std::size_t leaps_in(const std::vector<DatedValue>& values, const Run& run, std::int64_t most) {
    std::size_t leaps = 0;
    for (std::size_t i = 1; i < run.size(); ++i)
        leaps += is_leap(values[run[i - 1]], values[run[i]], most) ? 1U : 0U;
    return leaps;
}

/// Every subset looked at: longest, then fewest leaps, then the earliest positions.
Run by_trying_all(const std::vector<DatedValue>& values, std::int64_t most) {
    std::optional<std::tuple<std::int64_t, std::size_t, Run>> best;
    for (std::size_t mask = 0; mask < (std::size_t{1} << values.size()); ++mask) {
        Run run;
        for (std::size_t i = 0; i < values.size(); ++i) {
            if ((mask >> i & 1U) != 0) run.push_back(i);
        }
        const auto falls = [&](std::size_t a, std::size_t b) { return values[b].value < values[a].value; };
        if (std::ranges::adjacent_find(run, falls) != run.end()) continue;
        std::tuple candidate(-static_cast<std::int64_t>(run.size()), leaps_in(values, run, most), run);
        if (!best || candidate < *best) best = candidate;
    }
    return std::get<Run>(*best);
}

} // namespace

TEST_CASE("A run that never falls is kept whole") {
    CHECK(longest_run({}, 10).empty());
    CHECK(longest_run({{0, 5}, {1, 5}, {2, 9}}, 10) == Run{0, 1, 2});
}

TEST_CASE("The one value that contradicts the others is left out") {
    CHECK(longest_run({{0, 100}, {1, 900}, {2, 102}, {3, 103}}, 1000) == Run{0, 2, 3});
    CHECK(longest_run({{0, 100}, {1, 10}, {2, 102}, {3, 103}}, 1000) == Run{0, 2, 3});
}

TEST_CASE("Of two longest runs the one with fewer leaps is kept") {
    // 900 and 102 exclude each other; both runs have three values; by 900 it takes a leap of 800 in a day.
    CHECK(longest_run({{0, 100}, {1, 900}, {2, 102}, {20, 1000}}, 100) == Run{0, 2, 3});
}

TEST_CASE("Of two equal runs the one that keeps the earliest entries is kept") {
    CHECK(longest_run({{0, 10}, {1, 9}}, 100) == Run{0});
    CHECK(longest_run({{0, 10}, {1, 12}, {2, 11}, {3, 13}}, 100) == Run{0, 1, 3});
}

TEST_CASE("A leap is strictly above the limit, and a day counts at least one") {
    CHECK_FALSE(is_leap({0, 0}, {1, 2500}, 2500));
    CHECK(is_leap({0, 0}, {1, 2501}, 2500));
    CHECK_FALSE(is_leap({0, 0}, {0, 2500}, 2500));
    CHECK(is_leap({0, 0}, {0, 2501}, 2500));
    CHECK_FALSE(is_leap({0, 0}, {2, 5000}, 2500));
}

TEST_CASE("The run agrees with trying every subset") {
    CHECK(rc::check("longest, fewest leaps, earliest", [] {
        const auto size = *rc::gen::inRange<std::size_t>(0, 11);
        std::vector<DatedValue> values;
        std::int64_t day = 0;
        for (std::size_t i = 0; i < size; ++i) {
            day += *rc::gen::inRange<std::int64_t>(0, 3);
            values.push_back({day, *rc::gen::inRange<std::int64_t>(0, 30)});
        }
        RC_ASSERT(longest_run(values, 5) == by_trying_all(values, 5));
    }));
}

TEST_CASE("Thousands of readings give one run") {
    std::vector<DatedValue> values;
    for (std::int64_t i = 0; i < 20'000; ++i)
        values.push_back({i, i % 100 == 99 ? 5 : i * 10});
    const auto run = longest_run(values, 1000);
    CHECK(run.size() == 19'800);
}
