// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <optional>
#include <span>

namespace sumpbook::stats {

/// Fewest values from which limits are drawn (DESIGN).
inline constexpr std::size_t fewest_for_limits = 8;

/// Chart of single values and of the step from each to the next: a value beyond the limits is more than
/// the usual scatter of this series. Units: those of the series.
///
/// SOURCE: NIST/SEMATECH e-Handbook of Statistical Methods 6.3.2.2; d2 = 1.128 and D4 = 3.267 for ranges of
/// two, as printed in tables of control-chart constants.
struct IndividualsLimits {
    double mean = 0;
    double lower = 0; ///< mean - 3 mean_moving_range / 1.128.
    double upper = 0;
    double mean_moving_range = 0;  ///< Mean of |value - the one before|.
    double moving_range_upper = 0; ///< 3.267 mean_moving_range.
};

/// Values in the order they came. Absent below 8.
[[nodiscard]] std::optional<IndividualsLimits> individuals_limits(std::span<const double> values);

} // namespace sumpbook::stats
