// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/stats/incomplete_beta.h"

#include <math.h> // lgamma_r: lgamma itself writes a global

#include <cmath>

namespace sumpbook::stats {
namespace {

constexpr double close_enough = 1e-15;
constexpr double not_zero = 1e-300; // stands in for a 0 that would be divided by
constexpr int most_terms = 10'000;

double ln_gamma(double x) {
    int sign = 0;
    return lgamma_r(x, &sign);
}

double kept_from_zero(double x) { return std::fabs(x) < not_zero ? not_zero : x; }

/// 1 / (1 + d1 / (1 + d2 / ...)) by Lentz's method, two terms at a time.
double continued_fraction(double a, double b, double x) {
    double c = 1;
    double d = 1 / kept_from_zero(1 - (a + b) * x / (a + 1));
    double fraction = d;
    const auto take = [&](double term) {
        d = 1 / kept_from_zero(1 + term * d);
        c = kept_from_zero(1 + term / c);
        fraction *= d * c;
    };
    for (int m = 1; m <= most_terms; ++m) {
        const double even = a + 2 * m;
        take(m * (b - m) * x / ((even - 1) * even));
        take(-(a + m) * (a + b + m) * x / (even * (even + 1)));
        if (std::fabs(d * c - 1) < close_enough) break;
    }
    return fraction;
}

} // namespace

double incomplete_beta(double a, double b, double x) {
    if (x <= 0) return 0;
    if (x >= 1) return 1;
    const double factor =
        std::exp(ln_gamma(a + b) - ln_gamma(a) - ln_gamma(b) + a * std::log(x) + b * std::log1p(-x));
    if (x < (a + 1) / (a + b + 2)) return factor * continued_fraction(a, b, x) / a;
    return 1 - factor * continued_fraction(b, a, 1 - x) / b;
}

} // namespace sumpbook::stats
