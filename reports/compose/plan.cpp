// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/plan.h"

#include "model/garage/slugs.h"
#include "reports/compose/words.h"

#include <algorithm>

namespace sumpbook::compose {
namespace {

using document::Array;
using document::Cell;
using document::Document;
using document::Object;
using document::Value;

Value km(const std::optional<WrittenDistance>& written) {
    if (!written) return nullptr;
    const auto distance = distance_of(*written);
    if (!distance) return nullptr;
    const bool whole = distance->micrometres() % Distance::um_per_km == 0;
    return in_unit(*distance, DistanceUnit::km, whole ? 0 : 3);
}

void add_limits(Object& to, const std::string& name, const Limits& limits) {
    to.add(name + "_km", km(limits.distance)).add(name + "_months", limits.months);
    to.add(name + "_hours", limits.hours);
}

void add_margin(Object& to, const std::string& name, const std::optional<Margin>& margin) {
    const Margin given = margin.value_or(Margin{});
    to.add(name + "_km", km(given.distance))
        .add(name + "_days", given.days)
        .add(name + "_hours", given.hours);
}

Array texts(const std::vector<std::string>& list) {
    Array items;
    for (const auto& text : list)
        items.emplace_back(text);
    return items;
}

Value baseline_json(const Bike& bike, const std::string& slug_of_item) {
    for (const auto& baseline : bike.baselines) {
        if (baseline.value.slug != slug_of_item) continue;
        Object object;
        object.add("date", baseline.value.date).add("odometer_km", km(baseline.value.odometer));
        object.add("hours", baseline.value.hours);
        object.add("evidence", baseline.value.evidence ? Value(slug(*baseline.value.evidence)) : Value());
        return object;
    }
    return nullptr;
}

Object item_json(const std::string& bike, const PlanItem& item) {
    Object object;
    object.add("bike", bike).add("item", item.slug).add("label", item.label).add("kind", slug(item.kind));
    add_limits(object, "first", item.first);
    add_limits(object, "every", item.repeat);
    object.add("counted_from", slug(item.counted_from));
    add_margin(object, "window", item.window);
    add_margin(object, "lead", item.lead);
    object.add("compartment", item.compartment).add("slot", item.slot);
    object.add("includes", texts(item.includes)).add("parts", texts(item.parts));
    object.add("cost_minor", item.estimate ? Value(item.estimate->minor) : Value());
    object.add("currency", item.estimate ? Value(item.estimate->currency.code()) : Value());
    object.add("done_by", item.done_by ? Value(slug(*item.done_by)) : Value());
    object.add("in_force_from", item.in_force_from ? Value(*item.in_force_from) : Value());
    object.add("source", item.source);
    return object;
}

std::string margin_words(const std::optional<Margin>& margin, const std::string& otherwise) {
    if (!margin) return otherwise;
    std::string text;
    const auto add = [&](const std::string& part) { text += (text.empty() ? "" : ", ") + part; };
    if (margin->distance) add(words(*margin->distance));
    if (margin->hours) add(grouped(*margin->hours) + " h");
    if (margin->days) add(std::to_string(*margin->days) + " days");
    return text;
}

std::string baseline_words(const Baseline& baseline) {
    std::string text = "last done " + spelled_text(baseline.date) + " by your word";
    if (baseline.evidence) text += ", evidence " + std::string(slug(*baseline.evidence));
    return text;
}

std::string remarks(const PlanItem& item, const Bike* bike) {
    std::vector<std::string> parts;
    if (item.kind != PlanKind::upkeep) parts.emplace_back(slug(item.kind));
    if (item.counted_from == CountedFrom::grid) parts.emplace_back("on a grid");
    if (item.window) parts.push_back("window " + margin_words(item.window, ""));
    if (item.lead) parts.push_back("lead " + margin_words(item.lead, ""));
    for (const auto& included : item.includes)
        parts.push_back("with " + included);
    if (item.in_force_from) parts.push_back("from " + spelled_text(*item.in_force_from));
    if (bike != nullptr) {
        for (const auto& baseline : bike->baselines) {
            if (baseline.value.slug == item.slug) parts.push_back(baseline_words(baseline.value));
        }
    }
    std::string text;
    for (const auto& part : parts)
        text += (text.empty() ? "" : ", ") + part;
    return text;
}

std::vector<Cell> row_of(const PlanItem& item, const Bike* bike) {
    std::vector<Cell> row{Cell{item.slug, {}}, Cell{item.label, {}}, Cell{limits_words(item.first), {}},
                          Cell{limits_words(item.repeat), {}}};
    row.push_back({item.estimate ? words(*item.estimate) : std::string(), {}});
    row.push_back({remarks(item, bike), {}});
    return row;
}

document::Table table_of(const std::vector<const PlanItem*>& items, const Bike* bike) {
    document::Table table{{{"Item", {}},
                           {"What", {}},
                           {"First", {}},
                           {"Every", {}},
                           {"Cost", document::Align::right},
                           {"Besides", {}}},
                          {}};
    for (const auto* item : items)
        table.rows.push_back(row_of(*item, bike));
    return table;
}

} // namespace

std::string limits_words(const Limits& limits) {
    std::string text;
    const auto add = [&](const std::string& part) { text += (text.empty() ? "" : " or ") + part; };
    if (limits.distance) add(words(*limits.distance));
    if (limits.hours) add(grouped(*limits.hours) + " h");
    if (limits.months) add(std::to_string(*limits.months) + (*limits.months == 1 ? " month" : " months"));
    return text.empty() ? "-" : text;
}

document::Value plan_json(const std::vector<const Bike*>& bikes) {
    Array list;
    for (const auto* bike : bikes) {
        for (const auto& item : bike->plan) {
            Object object = item_json(bike->details.value.name, item.value);
            object.add("baseline", baseline_json(*bike, item.value.slug)).add("id", item.id);
            list.emplace_back(std::move(object));
        }
    }
    return document::list_of(std::move(list));
}

Document plan_text(const std::vector<const Bike*>& bikes) {
    Document text;
    for (const auto* bike : bikes) {
        text.heading("Upkeep plan of " + bike->details.value.name);
        if (bike->plan.empty()) {
            text.sentence("Nothing is planned yet. Start with: sumpbook -g FILE -b \"" +
                          bike->details.value.name + "\" plan starter");
            continue;
        }
        std::vector<const PlanItem*> items;
        for (const auto& item : bike->plan)
            items.push_back(&item.value);
        text.table(table_of(items, bike));
    }
    return text;
}

document::Value offered_plan_json(const std::string& bike, const std::vector<PlanItem>& items) {
    Array list;
    for (const auto& item : items)
        list.emplace_back(item_json(bike, item));
    return document::list_of(std::move(list));
}

Document offered_plan_text(const std::string& bike, const std::vector<PlanItem>& items) {
    Document text;
    text.heading("A plan to start from, for " + bike);
    std::vector<const PlanItem*> offered;
    for (const auto& item : items)
        offered.push_back(&item);
    text.table(table_of(offered, nullptr));
    text.sentence(
        "These are the low ends of what is common practice, not your maker's figures. Your handbook "
        "comes first: change each item to what it says with plan set. Intervals of inspections are "
        "set by law: check your authority.");
    return text;
}

} // namespace sumpbook::compose
