// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/garage.h"

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace sumpbook::cost {

/// Money that left the owner's pocket (above 0) or came back (below 0).
struct Spending {
    std::string bike;
    std::string entry_id; ///< Empty for the price the bike was bought or sold at.
    Date date;
    std::string category;
    Money amount;                 ///< In the garage's currency where it could be converted, else as paid.
    std::optional<Money> as_paid; ///< Set where `amount` was converted.
    std::optional<Money> parts;   ///< Of a job, in the currency of `amount`; absent where none has a price.
    std::optional<Money> labour;  ///< Of a job, in the currency of `amount`; absent where it has no price.
    bool operator==(const Spending&) const = default;
};

/// Buying and selling the bike itself: shown apart from what running it costs.
[[nodiscard]] bool is_purchase_or_sale(std::string_view category);

/// What an entry cost: the total as typed; else, of fuel, price x volume, and of a job the parts and the
/// labour. Several only where parts were paid in several currencies. Empty: nothing is known of money.
[[nodiscard]] std::vector<Money> money_of_entry(const Entry& entry);

/// Work that satisfies no item of the plan and was not planned.
[[nodiscard]] bool is_repair(const Entry& entry, const std::vector<Versioned<PlanItem>>& plan);

/// The category money of an entry counts in. Fuel: fuel. Oil changes and top-ups: oil. A repair: repairs, any
/// other job: upkeep. A tyre fitted: tyres; other parts: upkeep.
/// Modifications: gear. Costs: their own. All else: upkeep. DESIGN.
[[nodiscard]] std::string category_of_entry(const Entry& entry, const std::vector<Versioned<PlanItem>>& plan);

/// The owner's branch that ends in a category, where the categories are a tree; else the category itself.
[[nodiscard]] std::string branch_of(const GarageSettings& settings, std::string category);

/// Everything spent on a bike, by date (numbers.md 5). Valuations are never spending. The price the bike
/// was bought or sold at counts unless a cost entry of that category says it. Where the garage counts oil
/// per litre used, oil bought by the can is left out and the litres filled in count instead, beside the money
/// an entry has of its own: never both (oil_by_the_litre.h). Where the owner's categories are a tree
/// ("bike/fuel"), a category counts in the branch that ends in it.
[[nodiscard]] std::vector<Spending> spending_of(const Bike& bike, const GarageSettings& settings);

/// The same of several bikes, up to and with a day.
[[nodiscard]] std::vector<Spending> spending_until(const std::vector<const Bike*>& bikes,
                                                   const GarageSettings& settings, const Date& day);

enum class GroupBy { category, year, month, bike };
/// "category", "year", "month", "bike".
[[nodiscard]] std::string_view slug(GroupBy by);

/// Sums of one group, currencies apart, and how many amounts they are made of.
struct GroupTotal {
    MoneyByCurrency total;
    MoneyByCurrency parts;
    MoneyByCurrency labour;
    std::size_t count = 0;
    bool operator==(const GroupTotal&) const = default;
};
/// By the group's key: a category, "2024", "2024-05", a bike's name; in the order of the text.
[[nodiscard]] std::map<std::string, GroupTotal> grouped(const std::vector<Spending>& spending, GroupBy by);
[[nodiscard]] MoneyByCurrency total_of(const std::vector<Spending>& spending);

} // namespace sumpbook::cost
