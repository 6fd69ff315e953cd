// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/upkeep/open_recalls.h"

#include "model/upkeep/plan_due.h"

#include <map>

namespace sumpbook::upkeep {
namespace {

constexpr double lead_days = 30; // DESIGN (numbers.md 4.4)

std::map<std::string, std::vector<const LogEntry*>> by_number(const Bike& bike) {
    std::map<std::string, std::vector<const LogEntry*>> numbers;
    for (const auto* entry : entries_of<Recall>(bike))
        numbers[std::get<Recall>(entry->value.body).number].push_back(entry);
    return numbers;
}

bool waits(const Recall& recall) {
    if (recall.applies == Applies::no) return false;
    return !recall.done || (recall.recurring && recall.next_due);
}

std::string label_of(const Recall& recall) {
    const std::string label = (recall.type == RecallType::recall ? "Recall " : "Bulletin ") + recall.number;
    return recall.text ? label + ": " + *recall.text : label;
}

std::vector<DoneAndTimed> times_complied(const std::vector<const LogEntry*>& entries, const BikeToday& bike) {
    std::vector<DoneAndTimed> history;
    for (const auto* entry : entries) {
        if (!std::get<Recall>(entry->value.body).done) continue;
        Done done;
        done.at.date = entry->value.date;
        done.at.distance = bike.odometer().of_entry(entry->id);
        done.entry_id = entry->id;
        done.evidence = entry->value.evidence;
        history.push_back({done, std::nullopt});
    }
    return history;
}

DueItem item_of(const Recall& recall, const BikeToday& bike) {
    DueItem item;
    item.slug = "recall-" + recall.number;
    item.label = label_of(recall);
    item.kind = DueKind::recall;
    if (recall.next_due) item.limits.date = DateLimit{*recall.next_due, 0, 0, lead_days};
    judge(item, bike);
    if (recall.applies == Applies::unknown) {
        if (item.state > DueState::unknown) item.state = DueState::unknown;
        item.unknown_because = UnknownBecause::not_looked_up;
    } else if (!recall.next_due) {
        item.state = DueState::due;
    }
    return item;
}

} // namespace

std::vector<DueItem> open_recalls(const BikeToday& bike) {
    std::vector<DueItem> items;
    for (const auto& [number, entries] : by_number(bike.bike())) {
        const auto& latest = std::get<Recall>(entries.back()->value.body);
        if (!waits(latest)) continue;
        items.push_back(item_of(latest, bike));
        items.back().history = times_complied(entries, bike);
    }
    return items;
}

} // namespace sumpbook::upkeep
