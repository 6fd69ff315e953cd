// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/stats/two_groups.h"

#include "tests/catch.h"

using namespace sumpbook::stats;

// Wear of shoe soles, Box, Hunter and Hunter 1978 p. 100 (MASS::shoes), as two independent groups; 133174 of
// the 184756 splits are as far apart (recomputed by full enumeration).
TEST_CASE("every split of the values is tried") {
    const auto result = compare_two_groups({13.2, 8.2, 10.9, 14.3, 10.7, 6.6, 9.5, 10.8, 8.8, 13.3},
                                           {14.0, 8.8, 11.2, 14.2, 11.8, 6.4, 9.8, 11.3, 9.3, 13.6});
    REQUIRE(result);
    CHECK(result->p == Approx(133174.0 / 184756.0).epsilon(1e-12));
    CHECK(result->smallest_p == Approx(2.0 / 184756.0));
    CHECK_FALSE(result->by_ranks);
}

TEST_CASE("groups apart as far as they can be reach the smallest p") {
    const auto even = compare_two_groups({1, 2, 3}, {14, 15, 16});
    CHECK(even->p == Approx(0.1)); // 2 of 20
    CHECK(even->smallest_p == Approx(0.1));
    CHECK(even->shift == Approx(13));
    const auto uneven = compare_two_groups({1, 2, 3}, {14, 15});
    CHECK(uneven->p == Approx(0.1)); // 1 of 10
    CHECK(uneven->smallest_p == Approx(0.1));
}

TEST_CASE("the interval is exact: five against five leave out two differences on each side") {
    // P(U <= 2) = 4/252, P(U <= 3) = 7/252 > 0.025 (counted by hand: 1, 1, 2, 3 ways).
    const auto result = compare_two_groups({0, 0.1, 0.2, 0.3, 0.4}, {1, 3, 6, 10, 15});
    CHECK(result->confidence == Approx(1 - 2 * 4.0 / 252));
    CHECK(result->shift_low == Approx(0.8)); // third smallest of the 25 differences
    CHECK(result->shift_high == Approx(14.8));
}

TEST_CASE("too few for 95 %: the whole range of the differences, with its own confidence") {
    const auto result = compare_two_groups({1, 2}, {5, 9});
    CHECK(result->confidence == Approx(1 - 2.0 / 6));
    CHECK(result->shift_low == Approx(3));
    CHECK(result->shift_high == Approx(8));
    CHECK_FALSE(compare_two_groups({}, {1}));
    CHECK_FALSE(compare_two_groups({1}, {}));
}

TEST_CASE("where the splits are too many their ranks are counted, all of them") {
    std::vector<double> first;
    std::vector<double> second;
    for (int i = 0; i < 13; ++i) {
        first.push_back(i);
        second.push_back(i + 0.5);
    }
    const auto close = compare_two_groups(first, second);
    CHECK(close->by_ranks);
    CHECK(close->p > 0.5);
    for (auto& value : second)
        value += 100;
    CHECK(compare_two_groups(first, second)->p == Approx(2.0 / 10'400'600).epsilon(1e-9)); // C(26,13)
}

TEST_CASE("equal values on both sides show nothing") {
    CHECK(compare_two_groups({5, 5, 5, 5}, {5, 5, 5, 5})->p == Approx(1));
    std::vector<double> many(80, 5.0);
    CHECK(compare_two_groups(many, many)->p == Approx(1));
    std::vector<double> higher(80, 6.0);
    const auto apart = compare_two_groups(many, higher);
    CHECK(apart->p < 1e-9);
    CHECK(apart->shift_low == Approx(1));
    CHECK(apart->confidence == Approx(0.95));
}
