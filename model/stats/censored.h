// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

namespace sumpbook::stats {

/// A measured value, or only that it lies below a detection limit. Finite, in whatever unit its series has.
struct CensoredValue {
    double number = 0; ///< The value, or the limit it lies below.
    bool below = false;
};

/// Most of a series that may lie below detection for a summary (numbers.md 6.4).
inline constexpr double largest_share_below = 0.8;
/// Fewest detected values for a summary (numbers.md 6.4).
inline constexpr std::size_t fewest_detected = 3;

/// Middle and spread of a series of which some values are below detection: a line of the logarithms of the
/// detected values over normal scores stands in for the others.
struct CensoredSummary {
    double median = 0;
    double mean = 0;
    double sd = 0;
    double mean_of_logs = 0; ///< Natural logarithms, stand-ins among them.
    double sd_of_logs = 0;
    std::size_t detected = 0;
    std::size_t below = 0;
};

/// Regression on order statistics. Absent below 3 detected values, with more than 80 % below detection,
/// where all detected values share one plotting position, and where a number is not above 0.
///
/// SOURCE: plotting positions of D. R. Helsel and T. A. Cohn, Water Resources Research 24 (1988) 1997,
/// constant 0; tested on published examples.
[[nodiscard]] std::optional<CensoredSummary> summary_of_censored(std::span<const CensoredValue> values);

/// One step of a curve: the share of values that lie at or below a number.
struct CurveStep {
    double number = 0;
    double share = 0; ///< 0 to 1; the last is 1.
};

/// The product-limit curve of a series with values below detection (Kaplan-Meier, read from the top down),
/// one step a different detected value, rising. Empty without a detected value. What is left under the
/// lowest detected value counts with it.
///
/// SOURCE: E. L. Kaplan and P. Meier, Journal of the American Statistical Association 53 (1958) 457, on
/// flipped values; tested on a published example.
[[nodiscard]] std::vector<CurveStep> share_curve(std::span<const CensoredValue> values);
/// Smallest number at or below which at least the share lies (0 to 1), no lower than the lowest detected
/// value; absent for an empty curve.
[[nodiscard]] std::optional<double> quantile_of(const std::vector<CurveStep>& curve, double share);
/// Mean of the curve, what is left under its lowest step counted at that step: a value from above.
[[nodiscard]] double mean_of(const std::vector<CurveStep>& curve);

/// Numbers to rank by: every value below detection, and every detected one under the highest detection
/// limit, ties at the bottom (numbers.md 6.4). The tied ones become that limit less 1; the others stay.
[[nodiscard]] std::vector<double> ranked_numbers(std::span<const CensoredValue> values);

} // namespace sumpbook::stats
