// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/oil/history.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace sumpbook::oil {

/// Fraction of the old oil that stays in at a change where the bike does not say. DESIGN (numbers.md 6.3).
inline constexpr double usual_carry_over = 0.1;

/// How fast an element wore into one fill of oil, from the fill's beginning to a sample. Measured and
/// corrected figures are the two ends of what is true.
struct WearRate {
    std::string element;
    Distance over;                  ///< Above 0.
    double measured_mg_kg = 0;      ///< As the laboratory wrote it.
    double start_mg_kg = 0;         ///< Assumed at the beginning: carried over and new oil.
    double corrected_mg_kg = 0;     ///< Without fuel, top-up and make-up oil.
    std::vector<std::string> notes; ///< What was assumed or left out: full sentences.

    [[nodiscard]] double gain_mg_kg() const { return corrected_mg_kg - start_mg_kg; }
    [[nodiscard]] double per_1000km() const { return gain_mg_kg() / over.km() * 1000; }
    [[nodiscard]] double measured_per_1000km() const {
        return (measured_mg_kg - start_mg_kg) / over.km() * 1000;
    }
};

/// Corrected gain over distance (numbers.md 6.3): fuel, then the top-up just before the sample, then make-up
/// oil, over a start of f x the last sample of the fill before + (1 - f) x new oil. Without such a sample the
/// start is the new oil; a metal of the new oil that is not known, or below detection, counts 0; a last
/// sample below detection counts as new oil. Absent unless the element was measured in mg/kg and the
/// distance on the oil is known. `before`: the last sample of the fill directly before; null: none.
[[nodiscard]] std::optional<WearRate> wear_rate(const OilRecord& record, const FilledSample& sample,
                                                const FilledSample* before, std::string_view element);

/// The rate that the detection limit itself would give, for a sample in which the element is below it: no
/// more than that was worn off. Absent for every other state.
[[nodiscard]] std::optional<WearRate> wear_rate_at_most(const OilRecord& record, const FilledSample& sample,
                                                        const FilledSample* before, std::string_view element);
/// Whether the fill of one sample was drained to make room for the other's.
[[nodiscard]] bool is_fill_before(const OilRecord& record, const FilledSample& earlier,
                                  const FilledSample& later);

/// The rates of an element in the last sample of each fill up to this one, oldest first, this sample's last.
struct WearHistory {
    std::vector<WearRate> earlier;
    std::optional<WearRate> now;
};
[[nodiscard]] WearHistory wear_history(const OilRecord& record, const FilledSample& sample,
                                       const SampleHistory& history, std::string_view element);

/// This fill wears the element off at least twice as fast as the median of the earlier ones (two or more),
/// by more than the reproducibility at the measured value, over at least half their median distance (DESIGN,
/// numbers.md 6.1).
[[nodiscard]] bool wears_twice_as_fast(const WearHistory& history);
/// The rates keep rising over four fills or more: Mann-Kendall, two-sided p at most 0.10 (DESIGN).
[[nodiscard]] bool wear_keeps_rising(const WearHistory& history);
/// Median rate of the earlier fills, mg/kg in 1 000 km; absent without one.
[[nodiscard]] std::optional<double> median_wear_per_1000km(const WearHistory& history);

} // namespace sumpbook::oil
