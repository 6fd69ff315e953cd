// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace sumpbook::usage {

/// What is believed of a rider's rate: distance over a shape alpha of operating time is Gamma(alpha, rate
/// beta), and beta is Gamma(a, rate b). Conjugate: what is seen adds to a and b, and the distance to come is
/// b times a BetaPrime(alpha, a).
struct RateBelief {
    double a = 2;
    double b_km = 0;
    void see(double alpha, double distance_km) {
        a += alpha;
        b_km += distance_km;
    }
};

/// A rider of whom nothing is known but the median of a year's distance. a = 2 is DESIGN (numbers.md 3.3).
[[nodiscard]] RateBelief prior_belief(double median_km_a_year, double kappa);

/// The shape of a piece of operating time, with its logarithms: the same for many beliefs.
struct StepShape {
    explicit StepShape(double alpha_);
    double alpha;
    double ln_alpha;
    double ln_gamma;
};

/// ln of the density of the distance before it was seen, per km; under 1 km of the chance of less than that
/// (numbers.md 3.5 iii).
[[nodiscard]] double ln_evidence(const RateBelief& belief, const StepShape& shape, double distance_km);

} // namespace sumpbook::usage
