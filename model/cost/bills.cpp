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
#include <utility>

namespace sumpbook::cost {
namespace {

/// What each entry cost, by its id.
struct EntryBills {
    std::map<std::string, Bill> bills;
    std::map<std::string, Money> without_rate; ///< Entries with money that stands apart, and that money.
};

EntryBills bills_by_entry(const Bike& bike, GarageSettings settings, const Date& today) {
    settings.oil_bought_counts = OilBoughtCounts::per_litre_used;
    EntryBills all;
    for (const auto& line : spending_of(bike, settings)) {
        if (line.entry_id.empty() || line.date > today) continue;
        if (line.amount.currency != settings.currency)
            all.without_rate.insert_or_assign(line.entry_id, line.amount);
        auto& bill = all.bills[line.entry_id];
        bill.entry_id = line.entry_id;
        bill.date = line.date;
        bill.category = line.category;
        bill.minor += static_cast<double>(line.amount.minor);
    }
    std::erase_if(all.bills, [&](const auto& bill) {
        return all.without_rate.contains(bill.first) || bill.second.minor <= 0;
    });
    for (auto& [id, bill] : all.bills) {
        const double drift = drift_percent_a_year(settings, bill.category);
        bill.minor_today = bill.minor * price_factor(drift, days_between(bill.date, today));
    }
    return all;
}

/// The item and all it includes, without itself.
std::set<std::string> included_by(const PlanItem& item, const std::vector<Versioned<PlanItem>>& plan) {
    Entry named;
    named.does = {item.slug};
    auto slugs = upkeep::slugs_satisfied(named, plan);
    slugs.erase(item.slug);
    return slugs;
}

/// Work on the item that cost nothing, by the owner's own record of it.
bool done_for_nothing(const PlanItem& item, const Bike& bike) {
    if (item.estimate || item.kind == PlanKind::statutory || item.kind == PlanKind::renewal) return false;
    return std::ranges::any_of(bike.log, [&](const LogEntry& entry) {
        const Entry& value = entry.value;
        const bool looked_at =
            std::holds_alternative<Work>(value.body) || std::holds_alternative<Measure>(value.body);
        const bool on_paper = value.evidence && *value.evidence != Evidence::seen;
        return looked_at && !on_paper && money_of_entry(value).empty() &&
               upkeep::slugs_satisfied(value, bike.plan).contains(item.slug);
    });
}

/// What is included by others is paid for with them; of two that include each other the first.
void leave_out_included(std::vector<const PlanItem*>& items, const Bike& bike) {
    std::erase_if(items, [&](const PlanItem* item) {
        return std::ranges::any_of(items, [&](const PlanItem* other) {
            return other != item && included_by(*other, bike.plan).contains(item->slug) &&
                   !included_by(*item, bike.plan).contains(other->slug);
        });
    });
}

/// Items of the plan that the money of an entry is for.
std::vector<const PlanItem*> paid_for(const Entry& entry, const Bike& bike) {
    const auto done = upkeep::slugs_satisfied(entry, bike.plan);
    std::vector<const PlanItem*> items;
    std::set<std::string> covered;
    for (const auto& item : bike.plan) {
        if (!done.contains(item.value.slug) || covered.contains(item.value.slug)) continue;
        items.push_back(&item.value);
        covered.merge(included_by(item.value, bike.plan));
    }
    leave_out_included(items, bike);
    auto paid = items;
    if (items.size() > 1)
        std::erase_if(paid, [&](const PlanItem* item) { return done_for_nothing(*item, bike); });
    return paid.empty() ? items : paid;
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

/// The jobs the money of an entry is for, and each one's share.
std::vector<std::pair<std::string, double>> jobs_paid_for(const Entry& entry, const Bike& bike,
                                                          const GarageSettings& settings, const Date& today,
                                                          const std::set<std::string>& renewed) {
    if (const auto* fit = std::get_if<Fit>(&entry.body); fit != nullptr && renewed.contains(fit->slot))
        return {{fit->slot, 1}};
    const auto items = paid_for(entry, bike);
    const auto parts = shares(items, settings, today);
    std::vector<std::pair<std::string, double>> jobs;
    for (std::size_t i = 0; i < items.size(); ++i)
        jobs.emplace_back(items[i]->slug, parts[i]);
    return jobs;
}

} // namespace

std::vector<Bill> JobBills::of(const std::string& job) const {
    const auto found = by_job.find(job);
    return found == by_job.end() ? std::vector<Bill>{} : found->second;
}

JobBills job_bills(const Bike& bike, const GarageSettings& settings, const Date& today,
                   const std::set<std::string>& renewed) {
    const auto by_entry = bills_by_entry(bike, settings, today);
    JobBills all;
    for (const auto& entry : bike.log) {
        const auto jobs = jobs_paid_for(entry.value, bike, settings, today, renewed);
        const auto whole = by_entry.bills.find(entry.id);
        const auto apart = by_entry.without_rate.find(entry.id);
        for (const auto& [job, share] : jobs) {
            if (apart != by_entry.without_rate.end()) all.without_rate.insert_or_assign(job, apart->second);
            if (whole == by_entry.bills.end()) continue;
            Bill bill = whole->second;
            bill.minor *= share;
            bill.minor_today *= share;
            all.by_job[job].push_back(std::move(bill));
        }
    }
    return all;
}

std::vector<Bill> repair_bills(const Bike& bike, const GarageSettings& settings, const Date& today,
                               std::optional<Money>* without_rate) {
    const auto by_entry = bills_by_entry(bike, settings, today);
    std::vector<Bill> bills;
    for (const auto& entry : bike.log) {
        if (!is_repair(entry.value, bike.plan)) continue;
        if (const auto bill = by_entry.bills.find(entry.id); bill != by_entry.bills.end())
            bills.push_back(bill->second);
        const auto apart = by_entry.without_rate.find(entry.id);
        if (without_rate != nullptr && apart != by_entry.without_rate.end()) *without_rate = apart->second;
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
