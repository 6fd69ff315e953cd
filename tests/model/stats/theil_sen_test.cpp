// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/stats/theil_sen.h"

#include "tests/catch.h"

#include <vector>

using namespace sumpbook::stats;
using Values = std::vector<double>;

TEST_CASE("one wild value does not turn the line") {
    const auto line = theil_sen(Values{1, 2, 3, 4, 5}, Values{10, 20, 30, 900, 50}).value();
    CHECK(line.slope == 10.0);
    CHECK(line.intercept == 0.0);
    CHECK(line.residual_intercept == 0.0);
    CHECK(line.slopes == 10);
}

TEST_CASE("fewer than four points, or one x only, have no slope") {
    CHECK_FALSE(theil_sen(Values{1, 2, 3}, Values{1, 2, 3}).has_value());
    CHECK_FALSE(theil_sen(Values{5, 5, 5, 5}, Values{1, 2, 3, 4}).has_value());
}

TEST_CASE("two samples at one odometer reading: that pair is skipped") {
    const auto line = theil_sen(Values{0, 0, 1, 2}, Values{5, 1, 3, 4}).value();
    CHECK(line.slopes == 5);
    CHECK(line.slope == 1.0); // slopes -2 -0.5 1 1.5 2
}

TEST_CASE("four points have no 95 % interval, at 90 % they have their whole range") {
    const Values xs{1, 2, 3, 4};
    const Values ys{1, 2, 4, 8};
    CHECK_FALSE(slope_interval(xs, ys, 0.95).has_value());
    const auto range = slope_interval(xs, ys, 0.90).value();
    CHECK(range.exact);
    CHECK(range.slope == Interval{1, 4});
    CHECK(range.confidence == Approx(1 - 2.0 / 24));
}

TEST_CASE("a tied series leaves the exact interval for ranks between slopes") {
    const Values xs{1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12};
    const Values ys{1, 2, 2, 4, 4, 6, 7, 7, 9, 9, 11, 11};
    const auto range = slope_interval(xs, ys, 0.95).value();
    CHECK_FALSE(range.exact);
    CHECK(range.confidence == 0.95);
    const double slope = theil_sen(xs, ys)->slope;
    CHECK(range.slope.low < slope);
    CHECK(range.slope.high >= slope);
    CHECK(range.slope.high < 1.3); // ranks 25 and 43 of 66, well inside the steepest
    CHECK_FALSE(slope_interval(Values{1, 2, 3, 4}, Values{1, 2, 2, 3}, 0.95).has_value());
}
