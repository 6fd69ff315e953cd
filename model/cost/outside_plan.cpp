// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/cost/outside_plan.h"

#include "model/cost/spent.h"
#include "model/upkeep/recurring_costs.h"

#include <algorithm>
#include <map>
#include <set>
#include <string>

namespace sumpbook::cost {
namespace {

/// The entries whose money something in the forecast stands for. Fuel and oil that could not be priced are
/// told by themselves.
class Foretold {
public:
    Foretold(const upkeep::BikeToday& bike, const std::vector<PlannedJob>& jobs)
        : bike_(bike.bike()) {
        for (const auto& job : jobs)
            slots_.insert(job.item.slug);
        for (const auto& coming : upkeep::coming_costs(bike_, bike.today())) {
            for (const auto* payment : coming.payments)
                payments_.insert(payment->id);
        }
    }
    [[nodiscard]] bool holds(const LogEntry& entry) const {
        const Entry& value = entry.value;
        if (std::holds_alternative<Fuel>(value.body) || std::holds_alternative<TopUp>(value.body))
            return true;
        if (is_repair(value, bike_.plan) || payments_.contains(entry.id)) return true;
        const auto* fit = std::get_if<Fit>(&value.body);
        return (fit != nullptr && slots_.contains(fit->slot)) || satisfies_the_plan(value);
    }

private:
    [[nodiscard]] bool satisfies_the_plan(const Entry& entry) const {
        const auto done = upkeep::slugs_satisfied(entry, bike_.plan);
        return std::ranges::any_of(
            bike_.plan, [&](const Versioned<PlanItem>& item) { return done.contains(item.value.slug); });
    }

    const Bike& bike_;
    std::set<std::string> slots_;
    std::set<std::string> payments_;
};

/// "1240.00 EUR", "1240.00 EUR + 38.00 GBP".
std::string words_of(const MoneyByCurrency& sum) {
    std::string words;
    for (const auto& money : sum.amounts())
        words += (words.empty() ? "" : " + ") + text_of(money);
    return words;
}

/// "gear, tyres".
std::string joined(const std::set<std::string>& categories) {
    std::string text;
    for (const auto& category : categories)
        text += (text.empty() ? "" : ", ") + category;
    return text;
}

} // namespace

void tell_outside_plan(const upkeep::BikeToday& bike, const GarageSettings& settings,
                       const std::vector<PlannedJob>& jobs, std::vector<NotPriced>& not_priced) {
    if (bike.bike().plan.empty())
        not_priced.push_back({bike.name(), "planned upkeep", NotPricedBecause::no_plan, {}});
    const Foretold foretold(bike, jobs);
    std::map<std::string, const LogEntry*> entries;
    for (const auto& entry : bike.bike().log)
        entries.emplace(entry.id, &entry);
    // Oil by the litre: an oil change is foretold with what it took from the can.
    GarageSettings by_the_litre = settings;
    by_the_litre.oil_bought_counts = OilBoughtCounts::per_litre_used;
    MoneyByCurrency sum;
    std::set<std::string> categories;
    for (const auto& line : spending_of(bike.bike(), by_the_litre)) {
        const auto entry = entries.find(line.entry_id);
        const bool this_year = line.date > plus_months(bike.today(), -12) && line.date <= bike.today();
        if (!this_year || is_purchase_or_sale(line.category) || entry == entries.end()) continue;
        if (foretold.holds(*entry->second)) continue;
        sum.add(line.amount);
        categories.insert(line.category);
    }
    if (!sum.empty())
        not_priced.push_back(
            {bike.name(), joined(categories), NotPricedBecause::outside_plan, words_of(sum)});
}

} // namespace sumpbook::cost
