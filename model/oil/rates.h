// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/entry_parts.h"
#include "model/oil/limit_rows.h"
#include "model/quantity/distance.h"

#include <optional>
#include <string>
#include <utility>

namespace sumpbook::oil {

/// Running time between two samples, kept as a fraction so that limits compare exactly: hours of a meter
/// over 1, or kilometres over km per hour.
struct RunningTime {
    Decimal amount;
    Decimal per_hour{1}; ///< Above 0.
    [[nodiscard]] double hours() const;
    [[nodiscard]] bool is_metered() const { return per_hour == Decimal{1}; }
};

/// Below this a rate spreads the spectrometer's tolerance of 1 ppm over too short a time.
/// SOURCE: JOAP Manual Vol III, engine page TF30-P-414A (read).
inline constexpr int fewest_hours_for_rate = 5;
[[nodiscard]] bool is_too_short(const RunningTime& time);

/// (latest - previous) / hours x 10, ppm per 10 h.
/// SOURCE: JOAP Manual Vol III, units and footnote of the trend column; the formula itself from memory.
[[nodiscard]] double ppm_per_10h(double previous, double latest, double hours);
/// What 1 ppm of instrument tolerance makes of a rate: 10/hours, ppm per 10 h.
[[nodiscard]] double rate_error_ppm_per_10h(double hours);
/// Whether the rise over the time reaches the limit in ppm per 10 h; equal counts (JOAP, same page). Exact;
/// absent where the numbers leave 18 digits.
[[nodiscard]] std::optional<bool> reaches_trend(const Decimal& rise, const RunningTime& time,
                                                const Decimal& limit_ppm_per_10h);

enum class RateStanding {
    rated,
    unreliable,     ///< Under 5 hours.
    no_real_change, ///< Smaller than the method can repeat.
    open,           ///< Below detection at an end, and the two ends of the range disagree.
};

/// How fast an element rose between two samples of one fill (numbers.md 6.2). A range where an end is below
/// detection, else both ends are equal.
struct ElementRate {
    double low_ppm_per_10h = 0;
    double high_ppm_per_10h = 0;
    std::optional<std::pair<double, double>> ppm_per_1000km; ///< Low, high; absent: distance not known.
    double hours = 0;
    bool metered = true;       ///< Hours of a meter; false: distance over average speed.
    bool noise_tested = false; ///< False: no published precision for the element.
    RateStanding standing = RateStanding::rated;
    std::optional<bool> abnormal; ///< Against the set's trend limit; absent: none, or not rated.
    [[nodiscard]] bool is_rising() const { return standing == RateStanding::rated && low_ppm_per_10h > 0; }
};

/// Two samples of one fill and what lies between them.
struct BetweenSamples {
    RunningTime time;
    std::optional<Distance> distance;
    bool laboratories_differ = false;
};

/// Absent unless both values are amounts or below detection in mg/kg and time passed.
[[nodiscard]] std::optional<ElementRate> element_rate(const SampleValue& previous, const SampleValue& latest,
                                                      const BetweenSamples& between,
                                                      const std::optional<LimitRow>& trend_limit);

} // namespace sumpbook::oil
