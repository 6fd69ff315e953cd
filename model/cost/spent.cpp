// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/cost/spent.h"

#include "model/cost/exchange.h"
#include "model/cost/oil_by_the_litre.h"
#include "model/upkeep/done.h"
#include "model/usage/as_of.h"

#include <algorithm>
#include <array>
#include <iterator>

namespace sumpbook::cost {
namespace {

constexpr std::string_view purchase_category = "purchase";
constexpr std::string_view sale_category = "sale";

MoneyByCurrency parts_of(const Work& work) {
    MoneyByCurrency parts;
    for (const auto& part : work.parts) {
        if (part.price) parts.add(*part.price);
    }
    return parts;
}

std::vector<Money> money_of_job(const Work& work) {
    MoneyByCurrency sum = parts_of(work);
    if (work.labour_price) sum.add(*work.labour_price);
    return sum.amounts();
}

std::vector<Money> money_of_fuel(const Fuel& fuel) {
    if (!fuel.price || !fuel.volume) return {};
    const auto money = price_of(*fuel.price, *fuel.volume);
    return money ? std::vector<Money>{*money} : std::vector<Money>{};
}

bool is_valuation(const Entry& entry) {
    const auto* cost = std::get_if<Cost>(&entry.body);
    return cost != nullptr && cost->valuation;
}

bool has_cost_of(const Bike& bike, std::string_view category) {
    return std::ranges::any_of(entries_of<Cost>(bike), [&](const LogEntry* entry) {
        return std::get<Cost>(entry->value.body).category == category && !is_valuation(entry->value);
    });
}

/// Of all but repairs.
struct CategoryOf {
    std::string operator()(const Fuel&) const { return "fuel"; }
    std::string operator()(const OilChange&) const { return "oil"; }
    std::string operator()(const TopUp&) const { return "oil"; }
    std::string operator()(const Fit& fit) const { return fit.slot.ends_with("tyre") ? "tyres" : "upkeep"; }
    std::string operator()(const Modification&) const { return "gear"; }
    std::string operator()(const Cost& cost) const {
        return cost.category.empty() ? "upkeep" : cost.category;
    }
    std::string operator()(const auto& /*other*/) const { return "upkeep"; }
};

class Collector {
public:
    Collector(const Bike& bike, const GarageSettings& settings)
        : bike_(bike)
        , settings_(settings) {
        if (settings.oil_bought_counts == OilBoughtCounts::per_litre_used) cans_.emplace(bike, settings);
    }

    void add_entry(const LogEntry& logged) {
        const Entry& entry = logged.value;
        if (is_valuation(entry)) return;
        if (cans_ && cans_->is_shared_out(logged.id)) return;
        std::vector<Spending> lines;
        for (const auto& money : money_of_entry(entry)) {
            Spending spending = made(logged, money);
            if (const auto* work = std::get_if<Work>(&entry.body)) split_job(*work, spending);
            lines.push_back(std::move(spending));
        }
        const auto oil = cans_ ? cans_->worth_of_oil_in(logged.id) : std::nullopt;
        if (oil) add_oil(made(logged, *oil), lines);
        std::ranges::move(lines, std::back_inserter(all_));
    }
    void add_transfer(const std::optional<Transfer>& transfer, std::string_view category, int sign) {
        if (!transfer || !transfer->price || has_cost_of(bike_, category)) return;
        const Money money{sign * transfer->price->minor, transfer->price->currency};
        all_.push_back(made(transfer->date, std::string(category), money));
    }
    [[nodiscard]] std::vector<Spending> by_date() && {
        std::ranges::stable_sort(all_, {}, &Spending::date);
        return std::move(all_);
    }

private:
    [[nodiscard]] Spending made(const LogEntry& logged, const Money& money) const {
        Spending spending = made(logged.value.date, category_of_entry(logged.value, bike_.plan), money);
        spending.entry_id = logged.id;
        return spending;
    }
    /// One amount with what was paid in the same currency.
    static void add_oil(Spending oil, std::vector<Spending>& lines) {
        const auto same = std::ranges::find_if(lines, [&](const Spending& line) {
            return line.amount.currency == oil.amount.currency && !line.as_paid;
        });
        if (same == lines.end())
            lines.push_back(std::move(oil));
        else
            same->amount.minor += oil.amount.minor;
    }
    [[nodiscard]] Spending made(const Date& date, std::string category, const Money& money) const {
        Spending spending{.bike = bike_.details.value.name,
                          .date = date,
                          .category = branch_of(settings_, std::move(category)),
                          .amount = money};
        const auto own = converted(money, settings_.currency, date, settings_);
        if (own && money.currency != settings_.currency) {
            spending.amount = *own;
            spending.as_paid = money;
        }
        return spending;
    }
    /// Shares that were paid in another currency than the amount, and cannot be converted, are left out.
    void split_job(const Work& work, Spending& spending) const {
        const auto& currency = spending.amount.currency;
        const auto parts = parts_of(work).amounts();
        if (parts.size() == 1) spending.parts = converted(parts.front(), currency, spending.date, settings_);
        if (work.labour_price)
            spending.labour = converted(*work.labour_price, currency, spending.date, settings_);
    }

    const Bike& bike_;
    const GarageSettings& settings_;
    std::optional<OilCans> cans_;
    std::vector<Spending> all_;
};

} // namespace

bool is_purchase_or_sale(std::string_view category) {
    if (const auto leaf = category.rfind('/'); leaf != std::string_view::npos)
        category.remove_prefix(leaf + 1);
    return category == purchase_category || category == sale_category;
}

std::vector<Money> money_of_entry(const Entry& entry) {
    if (entry.paid) return {*entry.paid};
    if (const auto* fuel = std::get_if<Fuel>(&entry.body)) return money_of_fuel(*fuel);
    if (const auto* work = std::get_if<Work>(&entry.body)) return money_of_job(*work);
    return {};
}

bool is_repair(const Entry& entry, const std::vector<Versioned<PlanItem>>& plan) {
    const auto* work = std::get_if<Work>(&entry.body);
    if (work == nullptr || work->planned) return false;
    const auto done = upkeep::slugs_satisfied(entry, plan);
    return std::ranges::none_of(
        plan, [&](const Versioned<PlanItem>& item) { return done.contains(item.value.slug); });
}

std::string category_of_entry(const Entry& entry, const std::vector<Versioned<PlanItem>>& plan) {
    return is_repair(entry, plan) ? "repairs" : std::visit(CategoryOf{}, entry.body);
}

std::string branch_of(const GarageSettings& settings, std::string category) {
    const auto& own = settings.categories;
    if (std::ranges::find(own, category) != own.end()) return category;
    const auto ends_in_it = [&](const std::string& branch) { return branch.ends_with("/" + category); };
    const auto branch = std::ranges::find_if(own, ends_in_it);
    return branch == own.end() ? category : *branch;
}

std::vector<Spending> spending_of(const Bike& bike, const GarageSettings& settings) {
    Collector collector(bike, settings);
    collector.add_transfer(bike.details.value.bought, purchase_category, 1);
    collector.add_transfer(bike.details.value.sold, sale_category, -1);
    for (const auto& entry : bike.log)
        collector.add_entry(entry);
    return std::move(collector).by_date();
}

std::vector<Spending> spending_until(const std::vector<const Bike*>& bikes, const GarageSettings& settings,
                                     const Date& day) {
    std::vector<Spending> all;
    for (const Bike* bike : bikes) {
        auto of_bike = spending_of(usage::as_of(*bike, day), settings);
        std::ranges::move(of_bike, std::back_inserter(all));
    }
    return all;
}

std::string_view slug(GroupBy by) {
    constexpr std::array<std::string_view, 4> words{"category", "year", "month", "bike"};
    return words.at(static_cast<std::size_t>(by));
}

namespace {

std::string key_of(const Spending& spending, GroupBy by) {
    switch (by) {
    case GroupBy::category:
        return spending.category;
    case GroupBy::year:
        return iso_text(spending.date).substr(0, 4);
    case GroupBy::month:
        return iso_text(spending.date).substr(0, 7);
    case GroupBy::bike:
        return spending.bike;
    }
    return {};
}

} // namespace

std::map<std::string, GroupTotal> grouped(const std::vector<Spending>& spending, GroupBy by) {
    std::map<std::string, GroupTotal> groups;
    for (const auto& line : spending) {
        auto& group = groups[key_of(line, by)];
        group.total.add(line.amount);
        if (line.parts) group.parts.add(*line.parts);
        if (line.labour) group.labour.add(*line.labour);
        ++group.count;
    }
    return groups;
}

MoneyByCurrency total_of(const std::vector<Spending>& spending) {
    MoneyByCurrency total;
    for (const auto& line : spending)
        total.add(line.amount);
    return total;
}

} // namespace sumpbook::cost
