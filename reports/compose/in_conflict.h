// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/garage.h"

#include <string>
#include <vector>

namespace sumpbook::compose {

/// Something that stands in two versions of which none replaces the other.
struct InConflict {
    std::string bike; ///< Name; empty: the garage itself.
    std::string id;   ///< Of the version in use.
    std::string what; ///< "the entry k7-12 of Old twin", "the plan item engine-oil of Old twin".
};

/// Entries, details of bikes, card values, plan items, baselines and settings.
[[nodiscard]] std::vector<InConflict> in_conflict(const Garage& garage);

} // namespace sumpbook::compose
