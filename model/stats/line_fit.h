// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/stats/paired.h"

#include <cstddef>
#include <optional>
#include <span>

namespace sumpbook::stats {

/// The straight line with the least sum of squared distances in y, y = intercept + slope x, with the
/// standard deviations of both estimates. Units: those of the series.
///
/// SOURCE: the normal equations, sums taken about the means; certified example: NIST Statistical
/// Reference Datasets, Norris.
struct LineFit {
    std::size_t points = 0;
    double slope = 0;
    double intercept = 0;
    double slope_sd = 0;
    double intercept_sd = 0;
    double residual_sd = 0;          ///< With points - 2 degrees of freedom.
    std::optional<double> r_squared; ///< Absent where every y is the same.
    double mean_x = 0;
    double squares_x = 0; ///< Sum of (x - mean_x)^2, above 0.

    [[nodiscard]] double at(double x) const { return intercept + slope * x; }
};

/// Absent below 3 points (the scatter could not be told) and where every x is the same.
[[nodiscard]] std::optional<LineFit> fit_line(std::span<const double> xs, std::span<const double> ys);

/// Where one more value at `x` would lie with the given confidence (between 0 and 1), Student's t with
/// points - 2 degrees of freedom: at(x) -/+ t s sqrt(1 + 1/n + (x - mean)^2/Sxx).
[[nodiscard]] Interval prediction_interval(const LineFit& fit, double x, double confidence);

} // namespace sumpbook::stats
