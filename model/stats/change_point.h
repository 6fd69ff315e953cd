// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>

namespace sumpbook::stats {

/// Fewest values among which a change is looked for (DESIGN).
inline constexpr std::size_t fewest_for_change = 12;

/// The place in a series after which its level differs most, by rank only.
///
/// SOURCE: A. N. Pettitt, Applied Statistics 28 (1979) 126; checked on the flow of the Nile 1871-1970.
struct ChangePoint {
    std::size_t last_before =
        0;              ///< Number of values before the change, 1 to n - 1; the first if several tie.
    std::int64_t k = 0; ///< Largest |U|.
    double p = 1;       ///< min(1, 2 exp(-6 k^2/(n^3 + n^2))), an approximation.
};

/// Values in the order they came. Absent below 12.
[[nodiscard]] std::optional<ChangePoint> change_point(std::span<const double> values);

} // namespace sumpbook::stats
