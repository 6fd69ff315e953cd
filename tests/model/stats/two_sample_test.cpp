// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/stats/two_sample.h"

#include "tests/catch.h"

#include <cmath>
#include <vector>

using namespace sumpbook::stats;
using Values = std::vector<double>;

TEST_CASE("Groups that do not overlap are as far apart as can be", "[stats][two-sample]") {
    const auto test = permutation_test(Values{1, 2, 3}, Values{11, 12, 13}).value();
    CHECK(test.all == 20);
    CHECK(test.as_far == 2);
    CHECK(test.p_two_sided() == smallest_p(3, 3).value());
    const auto uneven = permutation_test(Values{1, 2}, Values{11, 12, 13}).value();
    CHECK(uneven.all == 10);
    CHECK(uneven.p_two_sided() == smallest_p(2, 3).value());
}

TEST_CASE("Equal values never differ", "[stats][two-sample]") {
    const auto test = permutation_test(Values{0.1, 0.1, 0.1}, Values{0.1, 0.1}).value();
    CHECK(test.as_far == test.all);
    CHECK(sign_flip_test(Values{5, 6}, Values{5, 6})->p_two_sided() == 1);
}

TEST_CASE("Too little and too much is not tested", "[stats][two-sample]") {
    CHECK_FALSE(permutation_test(Values{}, Values{1}));
    CHECK_FALSE(permutation_test(Values(30, 1.0), Values(30, 2.0)));
    CHECK_FALSE(sign_flip_test(Values{}, Values{}));
    CHECK_FALSE(sign_flip_test(Values(23, 1.0), Values(23, 2.0)));
    CHECK_FALSE(smallest_p(0, 3));
    CHECK_FALSE(smallest_p_of_pairs(0));
    CHECK(smallest_p_of_pairs(5).value() == Approx(2.0 / 32));
    CHECK_FALSE(shift_between(Values{}, Values{1}, 0.95));
    CHECK_FALSE(pooled_sd(Values{1}, Values{2}));
}

TEST_CASE("The count of Mann and Whitney, by hand", "[stats][two-sample]") {
    // Two of each: counts 0 1 2 2 3 4 over the six orders.
    CHECK(mann_whitney_lower_tail(2, 2, 0) == Approx(1.0 / 6));
    CHECK(mann_whitney_lower_tail(2, 2, 2) == Approx(4.0 / 6));
    CHECK(mann_whitney_lower_tail(2, 2, 4) == 1);
    // The published 5 % point of groups of five is U = 2, the tail 4 of 252 orders (tables, from memory).
    CHECK(mann_whitney_lower_tail(5, 5, 2) == Approx(4.0 / 252));
}

TEST_CASE("The shift is the middle of the differences, with its exact range", "[stats][two-sample]") {
    const auto few = shift_between(Values{1, 2, 4}, Values{3, 7}, 0.95).value();
    CHECK(few.shift == 2.5); // of -1 1 2 3 5 6
    CHECK_FALSE(few.reached);
    CHECK(few.confidence == Approx(1 - 2.0 / 10));
    CHECK((few.interval == Interval{-1, 6}));

    const Values as{1, 2, 3, 4, 5};
    const Values bs{11, 12, 13, 14, 15};
    const auto five = shift_between(as, bs, 0.95).value();
    CHECK(five.reached);
    CHECK(five.shift == 10);
    CHECK(five.confidence == Approx(1 - 2 * 4.0 / 252)); // P(U <= 2); U <= 3 is 7/252, above 2.5 %
    CHECK((five.interval == Interval{7, 13}));           // the third from both ends
}

TEST_CASE("The spread within groups leaves their difference out", "[stats][two-sample]") {
    CHECK(pooled_sd(Values{1, 3}, Values{101, 103}).value() == Approx(std::sqrt(2.0)));
}
