// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/upkeep/due.h"

#include "model/upkeep/later_times.h"
#include "model/upkeep/open_recalls.h"
#include "model/upkeep/plan_due.h"
#include "model/upkeep/reasons.h"
#include "model/upkeep/recurring_costs.h"
#include "model/upkeep/tyre_age.h"
#include "model/upkeep/wear_limits.h"

#include <algorithm>
#include <iterator>
#include <set>
#include <string>
#include <tuple>

namespace sumpbook::upkeep {
namespace {

void append(std::vector<DueItem>& items, std::vector<DueItem> more) {
    std::ranges::move(more, std::back_inserter(items));
}

bool sold(const BikeToday& bike) {
    const auto& sale = bike.bike().details.value.sold;
    return sale && sale->date <= bike.today();
}

bool listed_before(const DueItem& a, const DueItem& b) {
    // Without a day last among its equals.
    const auto key = [](const DueItem& item) {
        return std::tuple(item.state, !item.date_p50.has_value(), item.date_p50.value_or(Date{}), item.bike,
                          item.slug);
    };
    return key(a) < key(b);
}

/// Of items with one slug the second gets "-2", the third "-3": each can be named.
void tell_apart(std::vector<DueItem>& items) {
    std::set<std::string> taken;
    for (const auto& item : items)
        taken.insert(item.slug);
    std::set<std::string> seen;
    for (auto& item : items) {
        const std::string slug = item.slug;
        for (int number = 2; seen.contains(item.slug) || (item.slug != slug && taken.contains(item.slug));
             ++number)
            item.slug = slug + "-" + std::to_string(number);
        seen.insert(item.slug);
    }
}

void add_detail(std::vector<DueItem>& items, const BikeToday& bike, DueDetail detail) {
    Reasons reasons(bike);
    for (auto& item : items) {
        if (detail.later_times) item.later_times = later_times(item, bike);
        if (detail.reasons) item.reasons = reasons.of(item);
    }
}

std::vector<DueItem> unsorted(const BikeToday& bike, DueDetail detail) {
    std::vector<DueItem> items;
    if (sold(bike)) return items;
    for (const auto& item : bike.bike().plan) {
        if (auto due = plan_due(item.value, bike)) items.push_back(std::move(*due));
    }
    append(items, open_recalls(bike));
    append(items, recurring_costs(bike));
    append(items, tyre_ages(bike));
    append(items, wear_limits(bike));
    tell_apart(items);
    add_detail(items, bike, detail);
    return items;
}

} // namespace

std::vector<DueItem> due_items(const BikeToday& bike, DueDetail detail) {
    auto items = unsorted(bike, detail);
    std::ranges::stable_sort(items, listed_before);
    return items;
}

std::vector<DueItem> due_items(const std::vector<const Bike*>& bikes, const Date& today, DueDetail detail) {
    std::vector<DueItem> items;
    for (const auto* bike : bikes)
        append(items, unsorted(BikeToday(*bike, today), detail));
    std::ranges::stable_sort(items, listed_before);
    return items;
}

bool needs_attention(const std::vector<DueItem>& items) {
    return std::ranges::any_of(items, [](const DueItem& item) { return item.state <= DueState::due; });
}

} // namespace sumpbook::upkeep
