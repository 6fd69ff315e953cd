// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/upkeep/tyre_age.h"

#include "model/garage/tyre_date.h"
#include "model/upkeep/plan_due.h"

#include <array>

namespace sumpbook::upkeep {
namespace {

constexpr std::array<std::pair<std::string_view, std::string_view>, 2> tyre_slots{
    {{"front-tyre", "Front tyre by age"}, {"rear-tyre", "Rear tyre by age"}}};

const LogEntry* fitted_now(const Bike& bike, std::string_view slot) {
    const LogEntry* last = nullptr;
    for (const auto* entry : entries_of<Fit>(bike)) {
        if (std::get<Fit>(entry->value.body).slot == slot) last = entry;
    }
    return last;
}

DateLimit limit_from(const Date& made) {
    const Date replace = plus_months(made, tyre_replace_months);
    const int interval = days_between(made, replace);
    return {replace, interval, 0, interval / 10.0}; // the lead of every other item: a tenth of the interval
}

} // namespace

std::vector<DueItem> tyre_ages(const BikeToday& bike) {
    std::vector<DueItem> items;
    for (const auto& [slot, label] : tyre_slots) {
        const auto* entry = fitted_now(bike.bike(), slot);
        if (entry == nullptr) continue;
        const auto& code = std::get<Fit>(entry->value.body).tyre_date_code;
        const auto made = code ? read_tyre_date(*code, bike.today()) : refuse("no code");
        if (!made) continue;
        DueItem item;
        item.slug = std::string(slot) + "-age";
        item.label = label;
        item.kind = DueKind::component;
        item.set_right_by = slot;
        item.limits.date = limit_from(made->weeks.back().starts);
        item.source = "common practice, from memory: looked over every year from 5 years, replaced at 10";
        Done fitted;
        fitted.at.date = entry->value.date;
        fitted.at.distance = bike.odometer().of_entry(entry->id);
        fitted.entry_id = entry->id;
        item.history.push_back({fitted, std::nullopt});
        judge(item, bike);
        items.push_back(std::move(item));
    }
    return items;
}

} // namespace sumpbook::upkeep
