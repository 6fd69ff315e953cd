// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/stats/line_fit.h"

#include <boost/math/distributions/students_t.hpp>

#include <cmath>
#include <numeric>

namespace sumpbook::stats {
namespace {

double mean_of(std::span<const double> values) {
    return std::accumulate(values.begin(), values.end(), 0.0) / static_cast<double>(values.size());
}

/// Sum of (a - mean_a)(b - mean_b): about the means, so that large numbers do not cancel.
double centred_products(std::span<const double> as, double mean_a, std::span<const double> bs,
                        double mean_b) {
    double sum = 0;
    for (std::size_t i = 0; i < as.size(); ++i)
        sum += (as[i] - mean_a) * (bs[i] - mean_b);
    return sum;
}

double squared_residuals(std::span<const double> xs, std::span<const double> ys, const LineFit& fit,
                         double mean_y) {
    double sum = 0;
    for (std::size_t i = 0; i < xs.size(); ++i) {
        const double residual = (ys[i] - mean_y) - fit.slope * (xs[i] - fit.mean_x);
        sum += residual * residual;
    }
    return sum;
}

} // namespace

std::optional<LineFit> fit_line(std::span<const double> xs, std::span<const double> ys) {
    require_pairs(xs, ys);
    if (xs.size() < 3) return std::nullopt;
    LineFit fit;
    fit.points = xs.size();
    fit.mean_x = mean_of(xs);
    const double mean_y = mean_of(ys);
    fit.squares_x = centred_products(xs, fit.mean_x, xs, fit.mean_x);
    if (!(fit.squares_x > 0)) return std::nullopt;
    const auto n = static_cast<double>(fit.points);
    fit.slope = centred_products(xs, fit.mean_x, ys, mean_y) / fit.squares_x;
    fit.intercept = mean_y - fit.slope * fit.mean_x;

    const double left_over = squared_residuals(xs, ys, fit, mean_y);
    const double squares_y = centred_products(ys, mean_y, ys, mean_y);
    fit.residual_sd = std::sqrt(left_over / (n - 2));
    fit.slope_sd = fit.residual_sd / std::sqrt(fit.squares_x);
    fit.intercept_sd = fit.residual_sd * std::sqrt(1 / n + fit.mean_x * fit.mean_x / fit.squares_x);
    if (squares_y > 0) fit.r_squared = 1 - left_over / squares_y;
    return fit;
}

Interval prediction_interval(const LineFit& fit, double x, double confidence) {
    const auto n = static_cast<double>(fit.points);
    const boost::math::students_t student(n - 2);
    const double t = boost::math::quantile(boost::math::complement(student, (1 - confidence) / 2));
    const double away = x - fit.mean_x;
    const double half = t * fit.residual_sd * std::sqrt(1 + 1 / n + away * away / fit.squares_x);
    return {fit.at(x) - half, fit.at(x) + half};
}

} // namespace sumpbook::stats
