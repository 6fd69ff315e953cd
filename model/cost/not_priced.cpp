// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/cost/not_priced.h"

#include <array>

namespace sumpbook::cost {
namespace {

struct Reason {
    std::string_view slug, words;
};
constexpr std::array<Reason, 8> reasons{
    {{"no-cost", "no estimate and no past cost"},
     {"no-day", "nothing to count it from"},
     {"no-consumption", "how much is used is not known"},
     {"no-price", "what a litre costs is not recorded"},
     {"no-rate", "no exchange rate for its currency"},
     {"no-reading", "it comes by distance, and no odometer reading is recorded"},
     {"no-plan", "there is no upkeep plan"},
     {"outside-plan",
      "spent in the last 12 months on what nothing foretold here stands for; it may come again"}}};

} // namespace

std::string_view slug(NotPricedBecause reason) { return reasons.at(static_cast<std::size_t>(reason)).slug; }
std::string_view words(NotPricedBecause reason) { return reasons.at(static_cast<std::size_t>(reason)).words; }

} // namespace sumpbook::cost
