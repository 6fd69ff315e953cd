// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/stats/power.h"

#include "tests/catch.h"

#include <stdexcept>

using namespace sumpbook::stats;

TEST_CASE("Without a shift the power is the level", "[stats][power]") {
    CHECK(two_sample_power(5, 0) == Approx(0.05));
    CHECK(two_sample_power(7, 1) == two_sample_power(7, -1));
    CHECK_THROWS_AS(two_sample_power(1, 1), std::out_of_range);
}

TEST_CASE("A large shift needs few values, none needs more than there are", "[stats][power]") {
    CHECK(group_size_needed(100) == 2);
    CHECK_FALSE(group_size_needed(0));
    CHECK(group_size_needed(0.5) == 64); // the textbook figure for half a standard deviation (from memory)
}
