// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string_view>

namespace sumpbook::oil {

/// Why a value has no place on the ladder.
enum class Unrated {
    no_limit,         ///< No set of the profile publishes a limit for it.
    other_engines,    ///< The set's limits are for another fuel than the bike's, or the fuel is not stated.
    other_grade,      ///< The set's limits are for other SAE grades, or the grade is not recorded.
    leaded_petrol,    ///< Lead of the fuel hides lead of bearings.
    in_new_oil,       ///< The new oil itself reaches the limit.
    new_oil_unknown,  ///< An additive metal; how much the new oil holds is not known.
    no_reference,     ///< The limit is a change from the new oil, whose value is not known.
    method,           ///< Two methods, or one not stated.
    unit,             ///< The unit cannot be turned exactly into the set's.
    amount_missing,   ///< Detected or not, but the limit is an amount.
    detection_limit,  ///< Below a detection limit that lies above the first published level.
    judged_elsewhere, ///< Viscosity at 40 C where the one at 100 C decides.
    too_many_digits,  ///< Cannot be compared exactly.
};

/// "no-limit", "leaded-petrol", ...
[[nodiscard]] std::string_view slug(Unrated reason);
/// For owners: "The profile has no published limit for it.", or "for them" where several are meant.
[[nodiscard]] std::string_view sentence(Unrated reason, std::size_t quantities);

} // namespace sumpbook::oil
