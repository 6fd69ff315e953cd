// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/entry_parts.h"
#include "model/oil/coolant.h"
#include "model/oil/rate_value.h"

#include <optional>
#include <string>
#include <vector>

namespace sumpbook::oil {

/// A finding beside the single values that makes the sample at least `watch`.
struct Lift {
    std::string because;                 ///< Full sentence.
    std::optional<std::string> quantity; ///< Slug of what it is about, where it is one.
};

/// The word for a sample, and what keeps a clean one from being called within.
struct WholeSample {
    Word word = Word::not_enough_to_say;
    Word own_word = Word::not_enough_to_say; ///< Before the laboratory's flag.
    std::vector<std::string>
        missing;             ///< Names of what is not rated: "iron", "fuel", "water or glycol", "viscosity".
    std::vector<Lift> lifts; ///< Findings beside the single values.
    bool set_by_laboratory = false; ///< The laboratory's flag was worse than ours.
};

/// Worst ladder word over the values and lifts, but `within` only if Fe, Al, Cu, Cr, Pb (unless leaded
/// petrol), fuel, water or glycol, and viscosity are all rated. The laboratory's flag sets the word where it
/// is worse.
[[nodiscard]] WholeSample whole_sample(const std::vector<RatedValue>& values, const std::vector<Lift>& lifts,
                                       const std::optional<LabFlag>& flag,
                                       const std::optional<FuelType>& fuel);

} // namespace sumpbook::oil
