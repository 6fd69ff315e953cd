// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/stats/line_fit.h"

#include "tests/catch.h"

#include <limits>
#include <stdexcept>
#include <vector>

using namespace sumpbook::stats;
using Values = std::vector<double>;

TEST_CASE("a line needs three points and two different x") {
    CHECK_FALSE(fit_line(Values{1, 2}, Values{1, 2}).has_value());
    CHECK_FALSE(fit_line(Values{4, 4, 4}, Values{1, 2, 3}).has_value());
    CHECK(fit_line(Values{4, 4, 5}, Values{1, 2, 3}).has_value());
}

TEST_CASE("points on a line are fitted without a rest") {
    const auto fit = fit_line(Values{0, 1, 2, 3}, Values{5, 3, 1, -1}).value();
    CHECK(fit.points == 4);
    CHECK(fit.slope == -2.0);
    CHECK(fit.intercept == 5.0);
    CHECK(fit.residual_sd == 0.0);
    CHECK(fit.r_squared == 1.0);
    CHECK(fit.at(10) == -15.0);
    const Interval next = prediction_interval(fit, 10, 0.8);
    CHECK(next == Interval{-15, -15});
}

TEST_CASE("a level series has slope 0 and no share of variation to explain") {
    const auto fit = fit_line(Values{1, 2, 3}, Values{4, 4, 4}).value();
    CHECK(fit.slope == 0.0);
    CHECK_FALSE(fit.r_squared.has_value());
}

TEST_CASE("large x such as odometer readings do not spoil the slope") {
    const auto near = fit_line(Values{0, 1, 2, 3}, Values{0, 1, 1, 2}).value();
    const auto far = fit_line(Values{1e9, 1e9 + 1, 1e9 + 2, 1e9 + 3}, Values{0, 1, 1, 2}).value();
    CHECK(far.slope == near.slope);
    CHECK(far.residual_sd == Approx(near.residual_sd).epsilon(1e-14));
}

TEST_CASE("a prediction is surest at the mean of x and widens on both sides") {
    const auto fit = fit_line(Values{0, 1, 2, 3, 4}, Values{0, 2, 1, 4, 3}).value();
    const auto width = [&](double x) {
        const Interval range = prediction_interval(fit, x, 0.8);
        return range.high - range.low;
    };
    CHECK(width(2) < width(3));
    CHECK(width(1) == Approx(width(3)));
    CHECK(width(3) < width(9));
}

TEST_CASE("series of different length and values that are no numbers are faults of the caller") {
    CHECK_THROWS_AS(fit_line(Values{1, 2, 3}, Values{1, 2}), std::invalid_argument);
    const double nan = std::numeric_limits<double>::quiet_NaN();
    CHECK_THROWS_AS(fit_line(Values{1, 2, nan}, Values{1, 2, 3}), std::invalid_argument);
}
