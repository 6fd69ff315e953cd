// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/cost/repair_rate.h"

#include <boost/math/distributions/negative_binomial.hpp>

namespace sumpbook::cost {
namespace {

namespace policies = boost::math::policies;
using WholeAbove = policies::policy<policies::discrete_quantile<policies::integer_round_up>>;
using Counts = boost::math::negative_binomial_distribution<double, WholeAbove>;

} // namespace

double RepairRate::chance_of(std::int64_t count, double distance_km) const {
    return boost::math::pdf(Counts(shape, rate_km / (rate_km + distance_km)), static_cast<double>(count));
}

std::int64_t RepairRate::quantile(double distance_km, double p) const {
    if (distance_km <= 0) return 0;
    return static_cast<std::int64_t>(
        boost::math::quantile(Counts(shape, rate_km / (rate_km + distance_km)), p));
}

} // namespace sumpbook::cost
