// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/quantity/decimal.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace sumpbook::oil {

// SOURCE of everything here: SAE J300, edition 2015-01-20; the figures are in sae_grade.csv.

/// A viscosity grade of engine oil as printed on the can: 10W-40, SAE 50 or 5W. At least one of the two
/// parts is there; what `read_sae_grade` returns is a grade of the standard.
struct SaeGrade {
    std::optional<int> winter; ///< 0 5 10 15 20 25.
    std::optional<int> hot;    ///< 8 12 16 20 30 40 50 60.
    bool operator==(const SaeGrade&) const = default;
};

/// "10W-40", "50", "5W".
[[nodiscard]] std::string text_of(const SaeGrade& grade);
/// Reads 10W-40, 10w40, SAE 10W/40, SAE50, 50, 5W in any case. Numbers the standard does not have are
/// refused with those it has.
[[nodiscard]] Result<SaeGrade> read_sae_grade(std::string_view text);

/// Kinematic viscosities at 100 C, mm2/s: `from` belongs to the grade, `below` no longer does; absent:
/// no upper end (grades with a winter part only).
struct ViscosityBand {
    Decimal from_mm2_s;
    std::optional<Decimal> below_mm2_s;
    bool operator==(const ViscosityBand&) const = default;
};

/// The band of the hot part; of a winter grade alone its minimum. Absent for a grade outside the standard.
[[nodiscard]] std::optional<ViscosityBand> band_of(const SaeGrade& grade);
/// Half-way between the ends, the stand-in for an unknown new oil; absent without an upper end.
[[nodiscard]] std::optional<Decimal> middle_mm2_s(const ViscosityBand& band);

enum class BandPosition { below, inside, above };
/// Exact, unrounded.
[[nodiscard]] BandPosition position_in(const ViscosityBand& band, const Decimal& kv100_mm2_s);

/// Least viscosity at 150 C and high shear, mPa s. SAE 40: 3.5 beside 0W, 5W or 10W, else 3.7. Absent for a
/// winter grade alone.
[[nodiscard]] std::optional<Decimal> least_hths_mpa_s(const SaeGrade& grade);

/// What a winter grade promises in the cold: viscosities of at most so many mPa s.
struct ColdLimits {
    Decimal cranking_max_mpa_s;
    Decimal cranking_celsius;
    Decimal pumping_max_mpa_s;
    Decimal pumping_celsius;
};
[[nodiscard]] std::optional<ColdLimits> cold_limits(int winter);

/// How a hot grade was or was not found.
enum class GradeOutcome {
    found,
    no_band,   ///< No grade holds this viscosity.
    ambiguous, ///< Bands overlap here and the viscosity at high shear, which decides, is not known.
    sheared,   ///< The viscosity at high shear is below the least of every grade that holds it.
};

/// The hot grade of a measured oil.
struct HotGrade {
    std::optional<int> grade;
    std::vector<int> candidates; ///< Every grade whose band holds the viscosity, lowest first.
    GradeOutcome outcome = GradeOutcome::no_band;
    bool light_winter_only = false; ///< The high-shear value suffices beside 0W, 5W or 10W only (SAE 40).
};

/// The grade of a viscosity at 100 C and, where known, at 150 C and high shear. Where bands overlap the
/// highest grade whose high-shear minimum is met (SAE J300 section 6; that rule from memory).
[[nodiscard]] HotGrade classify(const Decimal& kv100_mm2_s, const std::optional<Decimal>& hths_mpa_s = {});

/// The hot grade whose band holds the viscosity of a reference oil, the higher where two overlap (DESIGN).
[[nodiscard]] std::optional<int> grade_holding(const Decimal& kv100_mm2_s);

} // namespace sumpbook::oil
