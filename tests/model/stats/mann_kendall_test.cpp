// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/stats/mann_kendall.h"

#include "tests/catch.h"

#include <numeric>
#include <vector>

using namespace sumpbook::stats;
using Values = std::vector<double>;

namespace {

Values count_to(std::size_t n) {
    Values values(n);
    std::iota(values.begin(), values.end(), 1.0);
    return values;
}

} // namespace

TEST_CASE("three points are no trend, four cannot be surer than one in twelve") {
    CHECK_FALSE(mann_kendall(count_to(3), count_to(3)).has_value());
    const auto four = mann_kendall(count_to(4), count_to(4)).value();
    CHECK(four.s == 6);
    CHECK(four.exact);
    CHECK(four.p_two_sided == Approx(1.0 / 12));
}

TEST_CASE("p is counted exactly up to ten untied points and from the normal curve after that") {
    CHECK(mann_kendall(count_to(10), count_to(10))->exact);
    CHECK_FALSE(mann_kendall(count_to(11), count_to(11))->exact);
    CHECK_FALSE(mann_kendall(count_to(4), Values{1, 2, 2, 3})->exact);
    CHECK_FALSE(mann_kendall(Values{1, 2, 2, 3}, count_to(4))->exact);
}

TEST_CASE("falling is rising with the sign turned") {
    const auto rising = mann_kendall(count_to(5), Values{1, 3, 2, 5, 4}).value();
    const auto falling = mann_kendall(count_to(5), Values{5, 3, 4, 1, 2}).value();
    CHECK(rising.s == 6);
    CHECK(falling.s == -6);
    CHECK(rising.z == -falling.z);
    CHECK(rising.p_two_sided == falling.p_two_sided);
    // 14 of 120 orders reach 6, counted in the published table of the exact score
    CHECK(rising.p_two_sided == Approx(2 * 14 / 120.0));
}

TEST_CASE("a score of 0 and a series tied throughout say nothing at all") {
    const auto balanced = mann_kendall(count_to(4), Values{2, 4, 1, 3}).value();
    CHECK(balanced.s == 0);
    CHECK(balanced.z == 0.0);
    CHECK(balanced.p_two_sided == 1.0);
    const auto level = mann_kendall(count_to(5), Values{7, 7, 7, 7, 7}).value();
    CHECK(level.s == 0);
    CHECK(level.p_two_sided == 1.0);
}
