// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/oil/fills.h"
#include "model/oil/rates.h"

#include <optional>
#include <string_view>
#include <vector>

namespace sumpbook::oil {

/// The samples of used oil that came before one, of the same compartment.
struct SampleHistory {
    std::optional<FilledSample> previous;         ///< The one just before, of this fill or another.
    std::optional<FilledSample> previous_in_fill; ///< The one just before, of the same fill.
    std::vector<FilledSample> earlier_fills;      ///< The last sample of each earlier fill, oldest first.
};
[[nodiscard]] SampleHistory history_of(const OilRecord& record, const FilledSample& sample);

/// Time and distance between two samples of one fill: hours of the meter where both have them, else
/// distance over the bike's average speed (50 km/h where it is not stated, DESIGN). Absent: neither is known.
[[nodiscard]] std::optional<BetweenSamples> between(const OilRecord& record, const FilledSample& earlier,
                                                    const FilledSample& later);

/// The value of a quantity in a sample; null if it was not measured.
[[nodiscard]] const SampleValue* value_in(const Sample& sample, std::string_view quantity);

/// In mg/kg, which is also what a value without a unit is in. Absent: null, not a number, or in a unit that
/// cannot be converted exactly.
[[nodiscard]] std::optional<Decimal> measured_mg_kg(const SampleValue* value);

/// Silicon lower in each later fill: in the last samples of all fills up to this sample's, each held against
/// the one before (numbers.md 6.8). False with one fill, and where a fill's silicon is not known in mg/kg.
[[nodiscard]] bool silicon_fell_with_each_fill(const FilledSample& sample, const SampleHistory& history);
/// Every wear metal with two detected values in the fill fell by at least its repeatability (JOAP rule on
/// negative trends, engine page TF30-P-414A); false without one.
[[nodiscard]] bool wear_metals_fell(const FilledSample& sample, const SampleHistory& history);
/// The day the engine in the bike now was fitted; absent: the first one is still in.
[[nodiscard]] std::optional<Date> engine_fitted(const OilRecord& record);
/// Whether the wear of a fill can be held against other fills (DESIGN, numbers.md 6.10): not while the engine
/// runs in, which wears in its own way, and not of an engine that was replaced since.
enum class Comparability { yes, running_in, other_engine };
/// Of a sample whose fill is known; `fitted` from `engine_fitted`.
[[nodiscard]] Comparability comparability(const FilledSample& sample, const std::optional<Date>& fitted);
/// Hours the engine had run when the sample was drawn, counted from the last engine fitted; absent: not
/// known.
[[nodiscard]] std::optional<double> engine_hours(const OilRecord& record, const FilledSample& sample);

} // namespace sumpbook::oil
