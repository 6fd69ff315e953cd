// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/bike.h"
#include "model/oil/rate_value.h"

#include <optional>
#include <string>
#include <vector>

namespace sumpbook::oil {

/// Sodium and potassium that no limit of the profile judges, high enough to be named all the same.
struct CoolantSign {
    std::vector<std::string> metals; ///< Na, K or both; empty: nothing to name.
    bool may_be_coolant = false;     ///< False on an air- or oil-cooled bike: salt or an additive then.
    [[nodiscard]] bool is_named() const { return !metals.empty(); }
    /// Lifts the sample to at least watch and asks for a confirming sample.
    [[nodiscard]] bool lifts() const { return is_named() && may_be_coolant; }
};

/// Unrated sodium from 100 or potassium from 150 mg/kg, or both unrated and at least 20 mg/kg above the new
/// oil (not known: 0). Cooling not stated counts as liquid.
///
/// SOURCE: 100 and 150 Detroit Diesel BRO-0001 (read); 20 DESIGN (numbers.md 6.1).
[[nodiscard]] CoolantSign coolant_sign(const std::vector<RatedValue>& values,
                                       const std::optional<Cooling>& cooling);

} // namespace sumpbook::oil
