// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/bike.h"
#include "model/oil/limit_sets.h"
#include "model/oil/sae_grade.h"
#include "model/oil/unrated.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace sumpbook::oil {

/// What decides which limits of a set are for this engine and this oil. Absent: not stated.
struct EngineAndOil {
    std::optional<FuelType> fuel;
    std::optional<BlockMaterial> block;
    std::optional<SaeGrade> grade; ///< Recorded with the oil change.
};

/// The rules of one set that count for one value.
struct RuleChoice {
    std::vector<const LimitRule*> rules;   ///< Empty: `unrated` says why.
    std::optional<const LimitRule*> trend; ///< The limit for the change within a fill, where the set has one.
    std::optional<Unrated> unrated;
    std::vector<std::string> notes; ///< For owners: what was assumed or not known.
};

/// Scope rules of numbers.md 6.1. Rules for one fuel join bikes of that fuel; with the fuel not stated both
/// count where the set has both. Rules for SAE grades join oils of those grades. The rule for aluminium
/// blocks replaces the general one where the bike has such a block; with the block not stated both count.
/// Rules of several series all count. Rules for another method than `method` do not, nor does an absolute
/// base-number limit whose method is not stated. `despite_scope`: a set the owner chose joins whatever the
/// bike burns. Rules for gas engines join nothing.
[[nodiscard]] RuleChoice choose_rules(const LimitSet& set, std::string_view quantity,
                                      const std::optional<std::string>& method, const EngineAndOil& engine,
                                      bool despite_scope);

/// "petrol" for every petrol, "diesel"; empty where not stated.
[[nodiscard]] std::string fuel_word(const std::optional<FuelType>& fuel);

} // namespace sumpbook::oil
