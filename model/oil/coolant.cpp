// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/oil/coolant.h"

#include "model/oil/quantities.h"

#include <algorithm>

namespace sumpbook::oil {
namespace {

constexpr int sodium_mg_kg = 100;
constexpr int potassium_mg_kg = 150;
constexpr int both_above_new_mg_kg = 20;

/// An unrated amount of a metal, mg/kg, and how far it stands above the new oil.
struct Unjudged {
    Decimal amount;
    Decimal above_new;
};

std::optional<Unjudged> unjudged(const std::vector<RatedValue>& values, std::string_view metal) {
    const auto found = std::find_if(values.begin(), values.end(), [&](const RatedValue& value) {
        return value.written.quantity == metal && value.ladder == Ladder::unrated &&
               value.written.state == ValueState::measured;
    });
    if (found == values.end()) return std::nullopt;
    const auto& unit = found->written.unit;
    const auto amount = in_oil_unit(found->written.number, unit.empty() ? "mg/kg" : unit, "mg/kg");
    if (!amount) return std::nullopt;
    const auto above = subtract(*amount, fresh_number(*found).value_or(Decimal{0}));
    return Unjudged{*amount, above ? *above : *amount};
}

} // namespace

CoolantSign coolant_sign(const std::vector<RatedValue>& values, const std::optional<Cooling>& cooling) {
    CoolantSign sign;
    sign.may_be_coolant = !cooling || *cooling == Cooling::liquid;
    const auto sodium = unjudged(values, "Na");
    const auto potassium = unjudged(values, "K");
    const bool both = sodium && potassium && sodium->above_new >= Decimal{both_above_new_mg_kg} &&
                      potassium->above_new >= Decimal{both_above_new_mg_kg};
    if (both || (sodium && sodium->amount >= Decimal{sodium_mg_kg})) sign.metals.emplace_back("Na");
    if (both || (potassium && potassium->amount >= Decimal{potassium_mg_kg})) sign.metals.emplace_back("K");
    return sign;
}

} // namespace sumpbook::oil
