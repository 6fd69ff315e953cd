// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/oil/fuel_dilution.h"
#include "model/oil/rate_value.h"
#include "model/oil/viscosity_index.h"

#include <optional>
#include <string>

namespace sumpbook::oil {

/// Where the used oil stands by grade and change. `in_grade` absent: not known, as at 40 C; then the change
/// alone decides, as if in grade. Exact, unrounded.
///
/// SOURCE: DESIGN (numbers.md 6.1) on the -10, -20 and +20 % of the engine-oil guide BAD4: in grade, above
/// -10 and below +20 %: within; in grade and down to above -20 %, or out of grade between -10 and +20 %:
/// watch; else act.
[[nodiscard]] Ladder viscosity_ladder(const Decimal& fresh_mm2_s, const Decimal& used_mm2_s,
                                      const std::optional<bool>& in_grade);

/// What the viscosities of a sample say.
struct ViscosityFindings {
    std::optional<ViscosityAt> judged_at; ///< Absent: no viscosity was measured.
    std::optional<double> change_percent; ///< Against the new oil, at the temperature judged at.
    std::string reference;                ///< What the change is from; empty: no reference.
    std::optional<SaeGrade> grade;        ///< Recorded, else of the new oil's viscosity at 100 C.
    bool grade_is_recorded = false;
    std::optional<BandPosition> in_band;            ///< Of the used oil at 100 C.
    std::optional<Decimal> after_shear_floor_mm2_s; ///< Of the grade; absent: none known.
    std::optional<bool> below_shear_floor;
    std::optional<ViscosityIndex> index; ///< Where both viscosities were measured.
    std::optional<FuelFromViscosity>
        petrol; ///< Where a petrol engine's oil thinned from a measured reference.
};

/// The GRADE rule for one viscosity of a sample; `unrated` without a reference.
[[nodiscard]] RatedValue rate_viscosity(const SampleValue& value, const RatingBasis& basis);

/// `value_of` the viscosities among the sample's values.
[[nodiscard]] ViscosityFindings viscosity_findings(const std::vector<RatedValue>& values,
                                                   const RatingBasis& basis);

/// The grade an oil is held to: the recorded one, else the band that holds the new oil's viscosity at 100 C
/// (the higher where two overlap).
[[nodiscard]] std::optional<SaeGrade> grade_held_to(const ReferenceOil& reference);

} // namespace sumpbook::oil
