// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/usage/oil_fills.h"

#include <optional>
#include <string>
#include <vector>

namespace sumpbook::usage {

enum class OilUseAgainst { nothing, handbook, published };
enum class OilUseVerdict {
    unknown,     ///< No figure of the bike.
    within,      ///< Not above the handbook's figure.
    above,       ///< Above it.
    below_range, ///< Below every published figure.
    in_range,    ///< Published figures differ on it.
    above_range, ///< Above every published figure.
};

/// Oil used in one fill.
struct FillOilUse {
    OilFill fill;
    Volume topped_up; ///< In the whole fill.
    /// From the first to the last event with a known level: litres topped up after the first up to and
    /// including the last, plus the fall of level. Absent without two known levels apart in distance, and
    /// where a top-up between them has no amount.
    std::optional<double> litres_used;
    std::optional<Distance> over;
    std::optional<double> litres_per_1000km; ///< Below 0 only where levels contradict each other.
    /// Without a figure: at least what was topped up, over the distance to the last top-up (the oil was
    /// never above the mark). Absent where that is not known either.
    std::optional<double> at_least_litres_per_1000km;
    /// Of this fill's figure; of a lower bound only where it is above. Unknown while running in.
    OilUseVerdict verdict = OilUseVerdict::unknown;
};

/// A published figure for oil used, from oil_consumption.csv.
struct PublishedOilUse {
    std::string scope;
    std::string as_published;
    double litres_per_1000km = 0;
    bool run_in = false;
    std::string evidence; ///< READ, READ (secondary) or FROM MEMORY.
    std::string source;
};
/// Rows that give litres per distance, in the file's order.
[[nodiscard]] const std::vector<PublishedOilUse>& published_oil_use();

/// Oil used by a compartment (numbers.md 2).
struct OilUseResult {
    std::vector<FillOilUse> fills;
    /// Litres over distance of the fills with a figure, run-in apart. Absent without one.
    std::optional<double> litres_per_1000km;
    std::optional<double> run_in_litres_per_1000km;
    OilUseAgainst against = OilUseAgainst::nothing;
    OilUseVerdict verdict = OilUseVerdict::unknown;
    std::optional<double> low_litres_per_1000km; ///< The handbook's figure, or the published range.
    std::optional<double> high_litres_per_1000km;
};

/// The engine is compared with the owner's manual figure, else with the range of published figures that
/// are not for running in; other compartments with nothing.
[[nodiscard]] OilUseResult oil_use(const Bike& bike, const OdometerSeries& odometer,
                                   std::string_view compartment = "engine");

} // namespace sumpbook::usage
