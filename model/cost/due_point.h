// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/upkeep/bike_today.h"

#include <optional>

namespace sumpbook::cost {

/// When a job is due: whichever comes first, in the figures paths are made of.
struct DuePoint {
    std::optional<double> km;  ///< True distance.
    std::optional<double> day; ///< Days from today.
    [[nodiscard]] bool any() const { return km || day; }
    bool operator==(const DuePoint&) const = default;
};

/// The earlier in each kind.
[[nodiscard]] DuePoint earlier(const DuePoint& a, const DuePoint& b);

/// Hours as the distance they come to. Without an accepted reading nothing crosses a distance: that limit is
/// left out.
[[nodiscard]] DuePoint due_point(const upkeep::NextLimits& limits, const upkeep::BikeToday& bike);

} // namespace sumpbook::cost
