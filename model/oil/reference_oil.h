// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/garage.h"
#include "model/oil/sae_grade.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace sumpbook::oil {

/// What a used oil is compared with: the sample of its new oil, and for viscosity at 100 C without such a
/// value the middle of the recorded SAE grade's band (numbers.md 6.6). Empty: nothing to compare with.
struct ReferenceOil {
    std::optional<std::string> sample; ///< Number or id of the new oil's sample.
    std::vector<SampleValue> values;   ///< Of that sample.
    std::optional<SaeGrade> grade;     ///< As recorded with the oil change.

    /// The new oil's value as the laboratory wrote it; of the grade's middle in mm2/s.
    [[nodiscard]] std::optional<SampleValue> value(std::string_view quantity) const;
    /// Whether the value is the grade's middle and no measurement.
    [[nodiscard]] bool is_grade_middle(std::string_view quantity) const;
    /// "the new oil's own sample V-1", "the middle of SAE 10W-40 (no sample of the new oil)"; empty: none.
    [[nodiscard]] std::string named(std::string_view quantity) const;
};

/// The new oil's sample for an oil change: by the number it names, else the sample of new oil with the same
/// oil name, the latest dated up to and including `until`, else the first after. Looked for in the bike
/// first, then in the other bikes of the garage.
[[nodiscard]] ReferenceOil reference_oil(const Garage& garage, const Bike& bike, const OilChange* change,
                                         const Date& until);

/// "S-12", or the entry's id where the sample has no number.
[[nodiscard]] std::string sample_label(const LogEntry& sample);

} // namespace sumpbook::oil
