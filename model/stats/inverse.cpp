// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/stats/inverse.h"

#include <boost/math/distributions/poisson.hpp>
#include <boost/math/distributions/students_t.hpp>
#include <boost/math/special_functions/erf.hpp>
#include <boost/math/special_functions/gamma.hpp>

#include <cmath>
#include <numbers>

namespace sumpbook::stats {
namespace {

namespace policies = boost::math::policies;
// Doubles are exact enough and several times as fast as the long doubles taken otherwise.
using Doubles = policies::policy<policies::promote_double<false>>;
using WholeAbove = policies::policy<policies::promote_double<false>,
                                    policies::discrete_quantile<policies::integer_round_up>>;

} // namespace

double gamma_inverse(double shape, double p) {
    return shape <= 0 ? 0 : boost::math::gamma_p_inv(shape, p, Doubles());
}

double normal_inverse(double p) { return -std::numbers::sqrt2 * boost::math::erfc_inv(2 * p, Doubles()); }

double student_inverse(double degrees_of_freedom, double p) {
    return boost::math::quantile(boost::math::students_t(degrees_of_freedom), p);
}

std::int64_t poisson_inverse(double mean, double p) {
    constexpr double summed_up_to = 50; // above it the sum loses digits, below it is the faster
    if (mean <= 0) return 0;
    if (mean > summed_up_to) {
        const boost::math::poisson_distribution<double, WholeAbove> counts(mean);
        return static_cast<std::int64_t>(boost::math::quantile(counts, p));
    }
    double chance = std::exp(-mean);
    double sum = chance;
    std::int64_t count = 0;
    while (sum < p && chance > 0) {
        ++count;
        chance *= mean / static_cast<double>(count);
        sum += chance;
    }
    return count;
}

} // namespace sumpbook::stats
