// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/cost/worn_parts.h"

#include "model/upkeep/tyre_age.h"
#include "model/upkeep/wear_limits.h"

#include <algorithm>

namespace sumpbook::cost {
namespace {

/// Where the part in a slot was fitted; absent: not recorded.
std::optional<Distance> fitted_at(const std::string& slot, const upkeep::BikeToday& bike) {
    std::optional<Distance> at;
    for (const auto* entry : entries_of<Fit>(bike.bike())) {
        if (std::get<Fit>(entry->value.body).slot == slot) at = bike.odometer().at_entry(*entry);
    }
    return at;
}

PartLife life_of(const upkeep::DueItem& item, const upkeep::BikeToday& bike) {
    const auto& worn_out = item.limits.distance;
    if (!worn_out) return {};
    const auto fitted = fitted_at(item.set_right_by, bike);
    const Distance life = fitted && *fitted < worn_out->at ? worn_out->at - *fitted : worn_out->interval;
    // Worn out where it was first measured: how long it lasted is not known.
    return life > Distance{} ? PartLife{.km = life.km(), .months = {}} : PartLife{};
}

void join(std::vector<WornPart>& parts, WornPart part) {
    const auto same = std::ranges::find(parts, part.set_right_by, &WornPart::set_right_by);
    if (same == parts.end()) {
        parts.push_back(std::move(part));
        return;
    }
    same->first = earlier(same->first, part.first);
    if (part.life.km) same->life.km = std::min(same->life.km.value_or(*part.life.km), *part.life.km);
    if (part.life.months) same->life.months = part.life.months;
}

} // namespace

std::vector<WornPart> worn_parts(const upkeep::BikeToday& bike) {
    std::vector<WornPart> parts;
    for (const auto& item : upkeep::wear_limits(bike))
        join(parts, {item.set_right_by, due_point(item.limits, bike), life_of(item, bike)});
    for (const auto& item : upkeep::tyre_ages(bike))
        join(parts, {item.set_right_by,
                     due_point(item.limits, bike),
                     {.km = {}, .months = upkeep::tyre_replace_months}});
    return parts;
}

std::string words_of_slot(std::string slot) {
    std::ranges::replace(slot, '-', ' ');
    if (!slot.empty() && slot[0] >= 'a' && slot[0] <= 'z') slot[0] = static_cast<char>(slot[0] - 'a' + 'A');
    return slot;
}

} // namespace sumpbook::cost
