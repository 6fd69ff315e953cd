// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/cost/bills.h"

#include "model/cost/exchange.h"
#include "model/cost/price_drift.h"
#include "model/cost/spent.h"
#include "model/upkeep/done.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <set>

namespace sumpbook::cost {
namespace {

/// All money of each entry in the garage's currency; entries with money of another are left out.
std::map<std::string, Bill> bills_by_entry(const Bike& bike, const GarageSettings& settings,
                                           const Date& today) {
    std::map<std::string, Bill> bills;
    std::set<std::string> apart;
    for (const auto& line : spending_of(bike, settings)) {
        if (line.entry_id.empty() || line.date > today) continue;
        if (line.amount.currency != settings.currency) apart.insert(line.entry_id);
        auto& bill = bills[line.entry_id];
        bill.entry_id = line.entry_id;
        bill.date = line.date;
        bill.category = line.category;
        bill.minor += static_cast<double>(line.amount.minor);
    }
    std::erase_if(bills, [&](const auto& bill) { return apart.contains(bill.first); });
    std::erase_if(bills, [](const auto& bill) { return bill.second.minor <= 0; });
    for (auto& [id, bill] : bills) {
        const double drift = drift_percent_a_year(settings, bill.category);
        bill.minor_today = bill.minor * price_factor(drift, days_between(bill.date, today));
    }
    return bills;
}

/// The item and all it includes, without itself.
std::set<std::string> included_by(const PlanItem& item, const std::vector<Versioned<PlanItem>>& plan) {
    Entry named;
    named.does = {item.slug};
    auto slugs = upkeep::slugs_satisfied(named, plan);
    slugs.erase(item.slug);
    return slugs;
}

/// Items of the plan that an entry did and that no other one of them includes; of two that include each
/// other the first.
std::vector<const PlanItem*> paid_for(const Entry& entry, const Bike& bike) {
    const auto done = upkeep::slugs_satisfied(entry, bike.plan);
    std::vector<const PlanItem*> items;
    std::set<std::string> covered;
    for (const auto& item : bike.plan) {
        if (!done.contains(item.value.slug) || covered.contains(item.value.slug)) continue;
        items.push_back(&item.value);
        covered.merge(included_by(item.value, bike.plan));
    }
    std::erase_if(items, [&](const PlanItem* item) {
        return std::ranges::any_of(items, [&](const PlanItem* other) {
            return other != item && included_by(*other, bike.plan).contains(item->slug) &&
                   !included_by(*item, bike.plan).contains(other->slug);
        });
    });
    return items;
}

/// Each item's part of the money, all together 1.
std::vector<double> shares(const std::vector<const PlanItem*>& items, const GarageSettings& settings,
                           const Date& today) {
    std::vector<double> parts;
    double sum = 0;
    for (const auto* item : items) {
        const auto estimate =
            item->estimate ? converted(*item->estimate, settings.currency, today, settings) : std::nullopt;
        parts.push_back(estimate && estimate->minor > 0 ? static_cast<double>(estimate->minor) : 0);
        sum += parts.back();
    }
    const bool all_estimated = std::ranges::none_of(parts, [](double part) { return part <= 0; });
    for (double& part : parts)
        part = all_estimated ? part / sum : 1 / static_cast<double>(items.size());
    return parts;
}

} // namespace

std::map<std::string, std::vector<Bill>> job_bills(const Bike& bike, const GarageSettings& settings,
                                                   const Date& today) {
    const auto by_entry = bills_by_entry(bike, settings, today);
    std::map<std::string, std::vector<Bill>> bills;
    for (const auto& entry : bike.log) {
        const auto whole = by_entry.find(entry.id);
        if (whole == by_entry.end()) continue;
        const auto items = paid_for(entry.value, bike);
        const auto parts = shares(items, settings, today);
        for (std::size_t i = 0; i < items.size(); ++i) {
            Bill bill = whole->second;
            bill.minor *= parts[i];
            bill.minor_today *= parts[i];
            bills[items[i]->slug].push_back(std::move(bill));
        }
    }
    return bills;
}

bool is_repair(const Entry& entry) {
    const auto* work = std::get_if<Work>(&entry.body);
    return work != nullptr && entry.does.empty() && !work->planned;
}

std::vector<Bill> repair_bills(const Bike& bike, const GarageSettings& settings, const Date& today) {
    const auto by_entry = bills_by_entry(bike, settings, today);
    std::vector<Bill> bills;
    for (const auto& entry : bike.log) {
        const auto bill = by_entry.find(entry.id);
        if (is_repair(entry.value) && bill != by_entry.end()) bills.push_back(bill->second);
    }
    return bills;
}

std::vector<double> ln_costs(const std::vector<Bill>& bills) {
    std::vector<double> logarithms;
    for (const auto& bill : bills)
        logarithms.push_back(std::log(bill.minor_today));
    return logarithms;
}

} // namespace sumpbook::cost
