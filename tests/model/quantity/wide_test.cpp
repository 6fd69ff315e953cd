// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/quantity/wide.h"

#include "tests/catch.h"

#include <limits>

using namespace sumpbook;

TEST_CASE("A quotient is rounded to the nearest whole number, a half to the even one", "[decimal]") {
    const auto divided = [](std::int64_t a, std::int64_t b) {
        return static_cast<std::int64_t>(divide_half_even(a, b));
    };
    CHECK(divided(4, 3) == 1);
    CHECK(divided(5, 3) == 2);
    CHECK(divided(1, 2) == 0);
    CHECK(divided(3, 2) == 2);
    CHECK(divided(5, 2) == 2);
    CHECK(divided(-1, 2) == 0);
    CHECK(divided(-3, 2) == -2);
    CHECK(divided(-5, 2) == -2);
    CHECK(divided(-5, 3) == -2);
    CHECK(divided(0, 7) == 0);
}

TEST_CASE("A denominator near the end of 128 bits is divided by as well", "[decimal]") {
    constexpr Wide largest = ~(Wide{1} << 127);
    CHECK((divide_half_even(largest - 1, largest) == 1));
    CHECK((divide_half_even(largest / 2, largest) == 0)); // a hair below the half
    CHECK((divide_half_even(largest / 2 + 1, largest) == 1));
}

TEST_CASE("A number past a limit is held there, on either side", "[decimal]") {
    CHECK(held_within(5, 10) == 5);
    CHECK(held_within(11, 10) == 10);
    CHECK(held_within(-11, 10) == -10);
    constexpr Wide past = Wide{std::numeric_limits<std::int64_t>::max()} + 1;
    CHECK(held_within(past, sum_limit) == sum_limit);
    CHECK(held_within(-past, sum_limit) == -sum_limit);
}
