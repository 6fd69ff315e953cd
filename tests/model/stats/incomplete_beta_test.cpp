// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/stats/incomplete_beta.h"

#include "tests/catch.h"

#include <boost/math/special_functions/beta.hpp>

#include <cmath>

using sumpbook::stats::incomplete_beta;

TEST_CASE("Closed forms of the incomplete beta function") {
    // I_x(a, 1) = x^a and I_x(1, b) = 1 - (1 - x)^b: NIST DLMF 8.17.7 with one argument 1.
    for (const double x : {0.001, 0.2, 0.5, 0.9, 0.999}) {
        for (const double shape : {0.05, 0.5, 1.0, 3.0, 40.0}) {
            CHECK(incomplete_beta(shape, 1, x) == Approx(std::pow(x, shape)).epsilon(1e-11));
            CHECK(incomplete_beta(1, shape, x) == Approx(1 - std::pow(1 - x, shape)).margin(1e-12));
        }
    }
    CHECK(incomplete_beta(7, 7, 0.5) == Approx(0.5).epsilon(1e-12));
    CHECK(incomplete_beta(3, 4, 0) == 0);
    CHECK(incomplete_beta(3, 4, -1) == 0);
    CHECK(incomplete_beta(3, 4, 1) == 1);
}

TEST_CASE("The incomplete beta function agrees with Boost's over all the shapes a forecast meets") {
    for (const double a : {0.001, 0.01, 0.1, 0.3, 1.0, 3.0, 12.0, 30.0, 100.0, 500.0, 2900.0}) {
        for (const double b : {2.0, 2.6, 8.0, 30.0, 90.0, 400.0}) {
            for (int i = -40; i <= 40; ++i) {
                const double odds = a / b * std::exp(i / 8.0);
                const double x = odds / (1 + odds);
                INFO(a << ' ' << b << ' ' << x);
                CHECK(incomplete_beta(a, b, x) ==
                      Approx(boost::math::ibeta(a, b, x)).epsilon(0).margin(5e-12));
            }
        }
    }
}
