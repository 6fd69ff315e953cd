// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/stats/median.h"

#include "tests/catch.h"

using sumpbook::stats::median;

TEST_CASE("the median is the middle value, or the mean of the two middle ones") {
    CHECK_FALSE(median({}).has_value());
    CHECK(median({7}) == 7.0);
    CHECK(median({3, 1}) == 2.0);
    CHECK(median({9, 1, 5}) == 5.0);
    CHECK(median({4, 1, 3, 2}) == 2.5);
}
