// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/stats/inverse.h"

#include "tests/catch.h"

#include <boost/math/distributions/gamma.hpp>
#include <boost/math/distributions/normal.hpp>
#include <boost/math/distributions/poisson.hpp>

using namespace sumpbook::stats;

TEST_CASE("The inverse gamma brings back the chance, from shapes of a winter week to those of a decade") {
    for (const double shape : {0.005, 0.02, 0.3, 0.999, 1.0, 1.7, 12.0, 48.0, 500.0}) {
        const boost::math::gamma_distribution<double> law(shape, 1.0);
        for (const double p : {0.001, 0.1, 0.5, 0.9, 0.999, 0.9999999}) {
            INFO(shape << " at " << p);
            const double x = gamma_inverse(shape, p);
            if (x < 1e-290) continue; // nothing is ridden
            CHECK(boost::math::cdf(law, x) == Approx(p).epsilon(1e-9));
        }
    }
    CHECK(gamma_inverse(0, 0.5) == 0);
    CHECK(gamma_inverse(0.001, 1e-16) == 0); // past the smallest double
}

TEST_CASE("The inverse normal is that of the table") {
    CHECK(normal_inverse(0.5) == Approx(0).margin(1e-15));
    CHECK(normal_inverse(0.9) == Approx(1.2815515655446004)); // from memory
    CHECK(normal_inverse(0.1) == Approx(-normal_inverse(0.9)));
    CHECK(normal_inverse(0x1p-53) > -9);
}

TEST_CASE("The inverse Poisson is the smallest count that reaches the chance, summed or not") {
    for (const double mean : {1e-9, 0.05, 1.0, 7.5, 49.9, 50.1, 300.0}) {
        const boost::math::poisson_distribution<double> law(mean);
        for (const double p : {0.01, 0.5, 0.9, 0.999}) {
            INFO(mean << " at " << p);
            const auto count = static_cast<double>(poisson_inverse(mean, p));
            CHECK(boost::math::cdf(law, count) >= p * (1 - 1e-12));
            if (count > 0) CHECK(boost::math::cdf(law, count - 1) < p);
        }
    }
    CHECK(poisson_inverse(0, 0.9) == 0);
}
