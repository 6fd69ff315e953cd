// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/stats/control_limits.h"

#include "tests/catch.h"

#include <vector>

using namespace sumpbook::stats;
using Values = std::vector<double>;

TEST_CASE("limits are drawn from eight values on") {
    CHECK_FALSE(individuals_limits(Values{1, 2, 3, 4, 5, 6, 7}).has_value());
    const auto limits = individuals_limits(Values{1, 2, 3, 4, 5, 6, 7, 8}).value();
    CHECK(limits.mean == 4.5);
    CHECK(limits.mean_moving_range == 1.0);
    CHECK(limits.upper == Approx(4.5 + 3 / 1.128));
    CHECK(limits.lower == Approx(4.5 - 3 / 1.128));
    CHECK(limits.moving_range_upper == Approx(3.267));
}

TEST_CASE("a series that never moves has limits on its level") {
    const auto limits = individuals_limits(Values(9, 20.0)).value();
    CHECK(limits.lower == 20.0);
    CHECK(limits.upper == 20.0);
}
