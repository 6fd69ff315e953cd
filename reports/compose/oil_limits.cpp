// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/oil_limits.h"

#include "model/oil/profiles.h"
#include "model/oil/quantities.h"
#include "model/oil/words.h"
#include "reports/compose/oil_words.h"

namespace sumpbook::compose {
namespace {

using document::Array;
using document::Cell;
using document::Document;
using document::Object;
using document::Value;
using oil::LimitRow;
using oil::LimitRule;
using oil::LimitSet;

std::string holds_for(const LimitRule& rule) {
    std::vector<std::string> words;
    if (!rule.fuel.empty()) words.push_back(rule.fuel);
    if (!rule.grades.empty()) words.push_back("SAE " + oil::listed(rule.grades));
    if (!rule.block.empty()) words.push_back(rule.block + " block");
    if (!rule.series.empty()) words.push_back(rule.series);
    if (!rule.method.empty()) words.push_back(rule.method + " method");
    return words.empty() ? "all" : oil::listed(words);
}

std::string quantity_words(const LimitRule& rule) {
    return rule.quantity == "kv" ? "viscosity, temperature not stated" : oil::quantity_name(rule.quantity);
}

document::Table limits_table(const LimitSet& set) {
    document::Table table{{{"Of", {}},
                           {"Level", {}},
                           {"Limit", {}},
                           {"Ladder", {}},
                           {"Holds for", {}},
                           {"Evidence", {}},
                           {"Note", {}}},
                          {}};
    for (const LimitRule& rule : set.rules) {
        for (const LimitRow& row : rule.rows) {
            table.rows.push_back({Cell{quantity_words(rule), {}}, Cell{row.level, {}},
                                  Cell{limit_words(row), {}}, Cell{marked(row.ladder), colour(row.ladder)},
                                  Cell{holds_for(rule), {}}, Cell{row.evidence, {}},
                                  Cell{row.note.empty() ? "-" : row.note, {}}});
        }
    }
    return table;
}

Value row_json(const LimitRule& rule, const LimitRow& row) {
    const bool detection = row.basis == oil::Basis::detection;
    return Object()
        .add("quantity", rule.quantity)
        .add("level", row.level)
        .add("ladder", oil::slug(row.ladder))
        .add("operator", detection ? std::string_view("detected") : oil::symbol(row.op))
        .add("value", detection ? Value() : Value(row.value))
        .add("unit", row.unit)
        .add("holds_for", holds_for(rule))
        .add("evidence", row.evidence)
        .add("note", row.note.empty() ? Value() : Value(row.note))
        .add("source", row.source);
}

Value set_json(const LimitSet& set, bool with_limits) {
    Object item;
    item.add("set", set.id).add("title", set.title).add("engines", set.engines).add("evidence", set.evidence);
    item.add("can_be_chosen", set.can_be_chosen()).add("caveat", set.caveat).add("source", set.source);
    if (!with_limits) return item;
    Array limits;
    for (const LimitRule& rule : set.rules) {
        for (const LimitRow& row : rule.rows)
            limits.push_back(row_json(rule, row));
    }
    return item.add("limits", std::move(limits));
}

void add_set(Document& text, const LimitSet& set) {
    text.heading(set.id + ": " + set.title);
    document::Facts facts;
    facts.lines.emplace_back("Published for", set.engines);
    facts.lines.emplace_back("Evidence", set.evidence);
    facts.lines.emplace_back("Caveat", set.caveat);
    facts.lines.emplace_back("Source", set.source);
    if (!set.can_be_chosen())
        facts.lines.emplace_back("Use", "shown only: figures from memory judge nothing");
    text.facts(facts);
}

} // namespace

Value oil_limits_json(const std::vector<const LimitSet*>& sets) {
    Array items;
    for (const LimitSet* set : sets)
        items.push_back(set_json(*set, sets.size() == 1));
    return document::list_of(std::move(items));
}

Document oil_limits_text(const std::vector<const LimitSet*>& sets) {
    Document text;
    for (const LimitSet* set : sets) {
        add_set(text, *set);
        if (sets.size() == 1 && !set->rules.empty()) text.table(limits_table(*set));
        if (sets.size() == 1 && set->watch_percent) {
            text.sentence("From " + std::to_string(*set->watch_percent) +
                          " % of a single upper limit Sumpbook says watch; that line is ours.");
        }
    }
    if (sets.size() == 1) return text;
    text.heading("Profiles");
    document::Facts profiles;
    for (const auto& profile : oil::profiles())
        profiles.lines.emplace_back(profile.name, profile.title);
    text.facts(profiles);
    text.sentence(
        "The sets do not agree with one another: one is chosen for each quantity and they are never mixed. "
        "Choose with: sumpbook -g FILE oil assess --profile NAME. The limits of one: oil limits --set ID");
    return text;
}

} // namespace sumpbook::compose
