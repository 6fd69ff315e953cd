// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/conflicts.h"

#include "model/garage/versions.h"
#include "reports/compose/entry_json.h"

#include <algorithm>

namespace sumpbook::compose {
namespace {

using document::Array;
using document::Cell;
using document::Document;
using document::Object;
using document::Severity;
using document::Value;

/// "k7" of "k7-142/2".
std::string chain_name(const std::string& id) { return id.substr(0, id.rfind('-')); }

std::string moment(const RecordedTime& time) {
    const std::string text = iso_text(time);
    return text.substr(0, 10) + ", " + text.substr(11, 5) + " UTC";
}

std::vector<DifferingField> differences(const OpenConflict& conflict) {
    std::vector<const RecordContent*> contents;
    for (const auto& side : conflict.sides)
        contents.push_back(&side.record->record.content);
    auto fields = differing_fields(contents);
    if (fields.empty() && !conflict.says_the_same()) {
        fields.push_back({"Differs", {}});
        fields.back().texts.assign(conflict.sides.size(), "in something that is not shown here");
    }
    return fields;
}

OpenConflict opened(const Conflict& conflict, const std::vector<NamedRecord>& records, std::string bike) {
    OpenConflict open{std::move(bike), {}, {}};
    for (const auto i : conflict.current.heads)
        open.sides.push_back({&records[i], chain_name(records[i].id), i == conflict.current.used});
    for (const auto i : conflict.versions)
        open.version_ids.push_back(records[i].id);
    return open;
}

template <class Text>
std::vector<Cell> row(const std::string& label, const OpenConflict& conflict, const Text& text) {
    std::vector<Cell> cells{{label, {}}};
    for (const auto& side : conflict.sides)
        cells.push_back({text(side), {}});
    return cells;
}

document::Table table_of(const OpenConflict& conflict) {
    document::Table table;
    table.columns.push_back({"", {}});
    for (std::size_t i = 0; i < conflict.sides.size(); ++i)
        table.columns.push_back({i == 0 ? "One" : "Another", {}});
    table.rows.push_back(row("Version", conflict, [](const ConflictSide& side) { return side.record->id; }));
    table.rows.push_back(row("Written in", conflict, [](const ConflictSide& side) { return side.written_in; }));
    table.rows.push_back(row("Recorded", conflict, [](const ConflictSide& side) {
        return moment(side.record->record.recorded);
    }));
    for (auto& field : differences(conflict)) {
        std::vector<Cell> cells{{field.label, {}}};
        for (auto& text : field.texts)
            cells.push_back({std::move(text), Severity::caution});
        table.rows.push_back(std::move(cells));
    }
    table.rows.push_back(row("Used until settled", conflict, [](const ConflictSide& side) {
        return std::string(side.used ? "yes" : "no");
    }));
    return table;
}

std::string what_to_type(const OpenConflict& conflict) {
    const auto& used = conflict.used().record->id;
    if (conflict.says_the_same())
        return "All of them say the same. To be done with it: sumpbook log settle " + used;
    std::string text = "To settle it: sumpbook log settle " + used + " --keep ";
    for (std::size_t i = 0; i < conflict.sides.size(); ++i)
        text += (i == 0 ? "" : " (or --keep ") + conflict.sides[i].record->id + (i == 0 ? "" : ")");
    const bool entry = std::holds_alternative<Entry>(conflict.used().record->record.content);
    if (entry) text += ". If none is right: sumpbook log correct " + used + " --FIELD VALUE";
    return text;
}

Object side_json(const OpenConflict& conflict, std::size_t place, const std::vector<DifferingField>& fields) {
    const auto& side = conflict.sides[place];
    const auto& content = side.record->record.content;
    Object differs;
    for (const auto& field : fields)
        differs.add(field.label, field.texts[place]);
    const auto* gone = std::get_if<Withdrawal>(&content);
    const auto* entry = std::get_if<Entry>(&content);
    Object object;
    object.add("id", side.record->id).add("chain", side.written_in);
    object.add("recorded", iso_text(side.record->record.recorded)).add("used", side.used);
    object.add("withdrawn", gone != nullptr);
    object.add("reason", gone != nullptr ? Value(gone->reason) : Value());
    object.add("differs", std::move(differs));
    object.add("entry", entry != nullptr ? Value(entry_json(conflict.bike, *entry)) : Value());
    return object;
}

} // namespace

const ConflictSide& OpenConflict::used() const {
    return *std::ranges::find_if(sides, &ConflictSide::used);
}

bool OpenConflict::says_the_same() const {
    return std::ranges::all_of(sides, [&](const ConflictSide& side) {
        return side.record->record.content == sides.front().record->record.content;
    });
}

std::vector<OpenConflict> open_conflicts(const std::vector<const Bike*>& bikes, bool of_garage,
                                         const std::vector<NamedRecord>& records) {
    std::vector<OpenConflict> open;
    for (const auto& conflict : conflicts(records)) {
        const auto& used = records[conflict.current.used];
        const auto bike = std::ranges::find(bikes, used.subject, &Bike::id);
        if (bike != bikes.end())
            open.push_back(opened(conflict, records, (*bike)->details.value.name));
        else if (of_garage && std::holds_alternative<GarageSettings>(used.record.content))
            open.push_back(opened(conflict, records, ""));
    }
    return open;
}

std::string conflict_title(const OpenConflict& conflict) {
    // A withdrawal is about what the other side says.
    const auto says = std::ranges::find_if(conflict.sides, [](const ConflictSide& side) {
        return !std::holds_alternative<Withdrawal>(side.record->record.content);
    });
    const auto& side = says == conflict.sides.end() ? conflict.used() : *says;
    const auto* settings = std::get_if<GarageSettings>(&side.record->record.content);
    const auto title = record_title(side.record->record.content);
    return settings != nullptr || conflict.bike.empty() ? title : conflict.bike + ": " + title;
}

Value conflicts_json(const std::vector<OpenConflict>& conflicts) {
    Array items;
    for (const auto& conflict : conflicts) {
        const auto fields = differences(conflict);
        Array versions;
        for (std::size_t i = 0; i < conflict.sides.size(); ++i)
            versions.emplace_back(side_json(conflict, i, fields));
        Object item;
        item.add("bike", conflict.bike.empty() ? Value() : Value(conflict.bike));
        item.add("about", conflict_title(conflict)).add("used", conflict.used().record->id);
        item.add("says_the_same", conflict.says_the_same()).add("versions", std::move(versions));
        items.emplace_back(std::move(item));
    }
    return document::list_of(std::move(items));
}

Document conflicts_text(const std::vector<OpenConflict>& conflicts) {
    Document text;
    if (conflicts.empty())
        return text.sentence("Nothing was changed in two places: there is nothing to settle.", Severity::good);
    for (const auto& conflict : conflicts)
        text.heading(conflict_title(conflict), 3).table(table_of(conflict)).sentence(what_to_type(conflict));
    return text.sentence("Nothing is lost either way: versions that are given up stay in the file as earlier "
                         "ones (sumpbook log show ID).");
}

std::string conflicts_remark(const std::vector<OpenConflict>& conflicts) {
    if (conflicts.empty()) return {};
    const std::string number = std::to_string(conflicts.size());
    return conflicts.size() == 1
               ? "This rests on something that was changed in two places and is not settled; the change "
                 "recorded last is used. See: sumpbook log conflicts"
               : "This rests on " + number +
                     " things that were changed in two places and are not settled; of each the change "
                     "recorded last is used. See: sumpbook log conflicts";
}

} // namespace sumpbook::compose
