// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/quantity/decimal.h"
#include "model/quantity/distance.h"

#include <optional>
#include <vector>

namespace sumpbook::upkeep {

/// One measurement of a part that wears.
struct WearPoint {
    std::optional<Distance> distance; ///< True distance; absent: not known, before the first reading.
    Decimal value;                    ///< In the unit of the series.
    bool operator==(const WearPoint&) const = default;
};

/// Which way a value goes as the part wears.
enum class WearDirection { falls, rises };

/// True at the limit and past it, compared as exact decimals.
[[nodiscard]] bool worn_out(const Decimal& value, const Decimal& limit, WearDirection direction);

/// The measurements since the part was last new: a value better than the one before it by more than a tenth
/// of the way from the limit to the best value so far starts anew (DESIGN: less is the hand that measured).
[[nodiscard]] std::vector<WearPoint> since_new(const std::vector<WearPoint>& points, const Decimal& limit,
                                               WearDirection direction);

/// Where the limit is reached, to the whole km: where it was first measured, if the last value is at it or
/// past it; else where a straight line meets it, by least squares from 3 points on (numbers.md 6.3), through
/// both of 2; never before the last measurement. Points without a distance are left out. Absent: one
/// measurement, or no wear to be seen; for a last value at the limit or past it, no distance of it.
[[nodiscard]] std::optional<Distance> worn_out_at(const std::vector<WearPoint>& points, const Decimal& limit,
                                                  WearDirection direction);

} // namespace sumpbook::upkeep
