// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/oil/unrated.h"

#include <algorithm>
#include <array>
#include <utility>

namespace sumpbook::oil {
namespace {

using Words = std::pair<std::string_view, std::string_view>;
constexpr std::array<Words, 13> words{
    Words{"no-limit", "The profile has no published limit for it."},
    Words{"other-engines",
          "The published limits are for another fuel than this bike's, or its fuel is not stated."},
    Words{"other-grade",
          "The published limits are for other SAE grades, or the grade of the oil is not recorded."},
    Words{"leaded-petrol", "Leaded petrol puts lead into the oil, so lead says nothing about bearings."},
    Words{"in-new-oil", "The new oil itself holds as much as the limit."},
    Words{"new-oil-unknown",
          "It can come with the oil, and how much the new oil holds is not known: have the new oil tested."},
    Words{"no-reference", "The limit is a change from the new oil, and the new oil's value is not known."},
    Words{"method", "Two methods, or one that is not stated, cannot be compared."},
    Words{"unit", "Its unit cannot be turned exactly into the unit of the limit."},
    Words{"amount-missing", "The limit is an amount, and the laboratory gave none."},
    Words{"detection-limit",
          "The laboratory cannot see low enough: its detection limit lies above the first published level."},
    Words{"judged-elsewhere", "Viscosity is judged at 100 C."},
    Words{"too-many-digits", "The number has more digits than can be compared exactly."}};

/// Where the sentence is about several quantities and would say "it".
constexpr std::array<std::pair<Unrated, std::string_view>, 4> of_several{
    {{Unrated::no_limit, "The profile has no published limit for them."},
     {Unrated::new_oil_unknown,
      "They can come with the oil, and how much the new oil holds is not known: have the "
      "new oil tested."},
     {Unrated::unit, "Their units cannot be turned exactly into the units of the limits."},
     {Unrated::amount_missing, "The limits are amounts, and the laboratory gave none."}}};

} // namespace

std::string_view slug(Unrated reason) { return words[static_cast<std::size_t>(reason)].first; }

std::string_view sentence(Unrated reason, std::size_t quantities) {
    const auto plural = std::ranges::find(of_several, reason, &std::pair<Unrated, std::string_view>::first);
    if (quantities > 1 && plural != of_several.end()) return plural->second;
    return words[static_cast<std::size_t>(reason)].second;
}

} // namespace sumpbook::oil
