// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/upkeep/recurring_costs.h"

#include "model/upkeep/plan_due.h"

#include <algorithm>

namespace sumpbook::upkeep {
namespace {

constexpr double lead_days = 30; // DESIGN (numbers.md 4.4)

/// One cost that comes again: its terms by the latest entry that states any, and all its payments.
struct Series {
    const Cost* terms = nullptr;
    std::vector<const LogEntry*> payments;
};

const Cost& cost_of(const LogEntry& entry) { return std::get<Cost>(entry.value.body); }

bool comes_again(const Cost& cost) { return cost.every_months && *cost.every_months > 0 && !cost.valuation; }

std::vector<Series> all_series(const std::vector<const LogEntry*>& costs) {
    std::vector<Series> all;
    for (const auto* entry : costs) {
        const Cost& cost = cost_of(*entry);
        if (!comes_again(cost)) continue;
        const auto known = std::ranges::find_if(all, [&](const Series& series) {
            return series.terms->category == cost.category && series.terms->text == cost.text;
        });
        if (known == all.end())
            all.push_back({&cost, {}});
        else
            known->terms = &cost;
    }
    return all;
}

void share_out_payments(std::vector<Series>& all, const std::vector<const LogEntry*>& costs) {
    for (const auto* entry : costs) {
        const Cost& cost = cost_of(*entry);
        const auto same_category = [&](const Series& s) { return s.terms->category == cost.category; };
        const bool only_one = std::ranges::count_if(all, same_category) == 1;
        for (auto& series : all) {
            if (cost.valuation || !same_category(series)) continue;
            if (only_one || series.terms->text == cost.text) series.payments.push_back(entry);
        }
    }
}

bool planned_elsewhere(const Series& series, const Bike& bike) {
    return std::ranges::any_of(series.payments, [&](const LogEntry* entry) {
        return std::ranges::any_of(entry->value.does, [&](const std::string& slug) {
            return find_plan_item(bike, slug) != nullptr;
        });
    });
}

/// Small letters and digits, one hyphen for all between: "Road tax, year" -> "road-tax-year".
std::string text_slug(std::string_view text) {
    std::string slug;
    for (const char c : text) {
        const bool upper = c >= 'A' && c <= 'Z';
        if (upper || (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9'))
            slug += upper ? static_cast<char>(c - 'A' + 'a') : c;
        else if (!slug.empty() && slug.back() != '-')
            slug += '-';
    }
    if (slug.ends_with('-')) slug.pop_back();
    return slug;
}

/// "cost-tax"; where several series share the category their texts tell them apart: "cost-tax-road".
std::string slug_of(const Series& series, const std::vector<Series>& all) {
    const std::string slug = "cost-" + series.terms->category;
    const auto shared = std::ranges::count_if(
        all, [&](const Series& other) { return other.terms->category == series.terms->category; });
    const std::string text = text_slug(series.terms->text.value_or(""));
    return shared == 1 || text.empty() ? slug : slug + "-" + text;
}

DueItem item_of(const ComingCost& coming) {
    DueItem item;
    item.slug = coming.slug;
    item.label = coming.label;
    item.kind = DueKind::cost;
    item.limits.date = DateLimit{coming.next, days_between(coming.counted_from, coming.next), 0, lead_days};
    item.estimate = coming.last->value.paid;
    for (const auto* entry : coming.payments) {
        Done done;
        done.at.date = entry->value.date;
        done.entry_id = entry->id;
        item.history.push_back({done, std::nullopt});
    }
    return item;
}

ComingCost coming_of(const Series& series, const std::string& slug) {
    const LogEntry& last = *series.payments.back();
    const auto months = static_cast<int>(*series.terms->every_months);
    const Date from = cost_of(last).covers_from.value_or(last.value.date);
    return {.slug = slug,
            .label = series.terms->text.value_or(series.terms->category),
            .category = series.terms->category,
            .counted_from = from,
            .next = plus_months(from, months),
            .every_months = months,
            .until = series.terms->until,
            .last = &last,
            .payments = series.payments};
}

/// The next payment, counted from the last, until the series ends.
std::function<NextLimits(const Moment&)> comes_again(int months, std::optional<Date> until) {
    return [months, until](const Moment& paid) {
        const Date next = plus_months(*paid.date, months);
        if (until && next > *until) return NextLimits{};
        return NextLimits{{}, DateLimit{next, days_between(*paid.date, next), 0, lead_days}, {}};
    };
}

} // namespace

std::vector<ComingCost> coming_costs(const Bike& bike, const Date& today) {
    const auto costs = entries_of<Cost>(bike);
    auto all = all_series(costs);
    share_out_payments(all, costs);
    std::vector<ComingCost> coming;
    for (const auto& series : all) {
        if (planned_elsewhere(series, bike)) continue;
        ComingCost cost = coming_of(series, slug_of(series, all));
        if (!cost.until || std::max(cost.next, today) <= *cost.until) coming.push_back(std::move(cost));
    }
    return coming;
}

std::vector<DueItem> recurring_costs(const BikeToday& bike) {
    std::vector<DueItem> items;
    for (const auto& coming : coming_costs(bike.bike(), bike.today())) {
        items.push_back(item_of(coming));
        items.back().again = comes_again(coming.every_months, coming.until);
        judge(items.back(), bike);
    }
    return items;
}

} // namespace sumpbook::upkeep
