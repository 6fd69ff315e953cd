// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/stats/reaching.h"

#include <boost/math/distributions/students_t.hpp>

#include <algorithm>
#include <cmath>
#include <vector>

namespace sumpbook::stats {
namespace {

/// height(x) = line(x) - level, the height above the level of a falling line, and the bounds round it.
struct Height {
    double at_0 = 0;
    double slope = 0;
    double spread = 0; ///< t^2 s^2
    double share = 0;  ///< 1 + 1/n
    double mean_x = 0;
    double squares_x = 1;

    [[nodiscard]] double line(double x) const { return at_0 + slope * x; }
    [[nodiscard]] double half_width(double x) const {
        return std::sqrt(spread * (share + (x - mean_x) * (x - mean_x) / squares_x));
    }
};

std::optional<double> line_root(const Height& height) {
    if (height.at_0 <= 0) return 0;
    if (height.slope >= 0) return std::nullopt;
    return -height.at_0 / height.slope;
}

/// Where either bound meets the level, smallest first.
std::vector<double> bound_roots(const Height& h) {
    const double a = h.slope * h.slope - h.spread / h.squares_x;
    const double b = 2 * (h.at_0 * h.slope + h.spread * h.mean_x / h.squares_x);
    const double c = h.at_0 * h.at_0 - h.spread * (h.share + h.mean_x * h.mean_x / h.squares_x);
    if (a == 0) return b == 0 ? std::vector<double>{} : std::vector<double>{-c / b};
    const double inside = b * b - 4 * a * c;
    if (inside < 0) return {};
    const double q = -(b + std::copysign(std::sqrt(inside), b)) / 2;
    std::vector<double> roots{q / a};
    if (q != 0) roots.push_back(c / q);
    std::sort(roots.begin(), roots.end());
    return roots;
}

/// First x from 0 on where the bound below (-1) or above (+1) the line is at the level or under it.
std::optional<double> bound_root(const Height& height, int side) {
    if (height.line(0) + side * height.half_width(0) <= 0) return 0;
    for (const double x : bound_roots(height)) {
        const bool own_bound = side < 0 ? height.line(x) >= 0 : height.line(x) <= 0;
        if (x > 0 && own_bound) return x;
    }
    return std::nullopt;
}

} // namespace

Reaching reaching(const LineFit& fit, double level, bool falling, double confidence) {
    const double sign = falling ? 1 : -1;
    const auto n = static_cast<double>(fit.points);
    const boost::math::students_t student(n - 2);
    const double t = boost::math::quantile(boost::math::complement(student, (1 - confidence) / 2));
    Height height;
    height.at_0 = sign * (fit.intercept - level);
    height.slope = sign * fit.slope;
    height.spread = t * t * fit.residual_sd * fit.residual_sd;
    height.share = 1 + 1 / n;
    height.mean_x = fit.mean_x;
    height.squares_x = fit.squares_x;
    return {bound_root(height, -1), line_root(height), bound_root(height, +1)};
}

} // namespace sumpbook::stats
