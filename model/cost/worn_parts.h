// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/cost/due_point.h"
#include "model/upkeep/bike_today.h"

#include <optional>
#include <string>
#include <vector>

namespace sumpbook::cost {

/// How long a part lasts once it is new. Absent: not by distance, not by age.
struct PartLife {
    std::optional<double> km;
    std::optional<int> months;
    bool operator==(const PartLife&) const = default;
};

/// A part of a bike that will be worn out or too old, as `due` tells it: all measurements of one part and the
/// age of a tyre together.
struct WornPart {
    std::string set_right_by; ///< The slot a new one is fitted to, or the plan item that sets it right.
    DuePoint first;           ///< When it is worn out or too old; whichever comes first.
    /// By distance: from the last one fitted to where this one is worn out; where that was not recorded, over
    /// the distance its wear was measured (DESIGN). By age: ten years, of tyres.
    PartLife life;
};

/// In the order `due` tells them.
[[nodiscard]] std::vector<WornPart> worn_parts(const upkeep::BikeToday& bike);

/// "front-tyre" -> "Front tyre".
[[nodiscard]] std::string words_of_slot(std::string slot);

} // namespace sumpbook::cost
