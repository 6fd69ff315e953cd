// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/oil/judge.h"
#include "model/oil/profiles.h"
#include "model/oil/rates.h"
#include "model/oil/reference_oil.h"
#include "model/oil/rule_choice.h"

#include <optional>
#include <string>
#include <vector>

namespace sumpbook::oil {

/// One value of a sample with its place on the ladder.
struct RatedValue {
    SampleValue written;              ///< As the laboratory wrote it.
    std::optional<SampleValue> fresh; ///< The new oil's value, where known.
    Ladder ladder = Ladder::unrated;
    std::optional<std::string> level;    ///< The set's own name of the level reached; absent: none reached.
    std::string set;                     ///< Id of the set that judged; empty: none.
    std::optional<LimitRow> limit;       ///< The limit reached, else the first one ahead.
    std::string source;                  ///< Of that limit, else of the set.
    std::vector<RuleVerdict> verdicts;   ///< Every rule that counted; the worst decides.
    std::optional<LimitRow> trend_limit; ///< For the change within a fill, where the set has one.
    std::optional<ElementRate> rate;     ///< Since the sample before in the same fill.
    std::optional<Unrated> unrated;
    std::vector<std::string> notes; ///< For owners, full sentences.
};

/// What a value is judged by.
struct RatingBasis {
    Profile profile;
    EngineAndOil engine;
    ReferenceOil reference;
};

/// A value by the profile's set for it; by the default profile's where the chosen one has no set or no limit
/// that fits (named in the notes). Not for viscosity where the set is GRADE.
/// `unrated` as listed in numbers.md 6.1.
[[nodiscard]] RatedValue rate_value(const SampleValue& value, const RatingBasis& basis);

/// The new oil's value as a number in the used value's unit; absent where it is not one.
[[nodiscard]] std::optional<Decimal> fresh_number(const RatedValue& value);
/// Number of a measured value, absent in the other states.
[[nodiscard]] std::optional<Decimal> measured_number(const SampleValue& value);

} // namespace sumpbook::oil
