// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/usage/rate_belief.h"

#include <math.h> // lgamma_r: lgamma itself writes a global

#include <algorithm>
#include <cmath>

namespace sumpbook::usage {
namespace {

constexpr double median_of_gamma_2_1 = 1.6783469900166608; // of Gamma(2, 1), numbers.md 3.3

double logarithm_of_gamma(double x) {
    int sign = 0;
    return lgamma_r(x, &sign);
}

} // namespace

RateBelief prior_belief(double median_km_a_year, double kappa) {
    return {2, median_of_gamma_2_1 * median_km_a_year / kappa};
}

StepShape::StepShape(double alpha_)
    : alpha(alpha_)
    , ln_alpha(std::log(alpha_))
    , ln_gamma(logarithm_of_gamma(alpha_)) {}

double ln_evidence(const RateBelief& belief, const StepShape& shape, double distance_km) {
    const double x = std::max(distance_km, 1.0);
    const auto& [a, b] = belief;
    const double density = logarithm_of_gamma(shape.alpha + a) - shape.ln_gamma - logarithm_of_gamma(a) +
                           a * std::log(b) + (shape.alpha - 1) * std::log(x) -
                           (shape.alpha + a) * std::log(b + x);
    return distance_km < 1 ? density - shape.ln_alpha : density;
}

} // namespace sumpbook::usage
