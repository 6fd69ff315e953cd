// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/log.h"

#include "reports/compose/entry_cells.h"
#include "reports/compose/entry_json.h"
#include "reports/compose/entry_words.h"
#include "reports/compose/fasteners.h"
#include "reports/compose/words.h"

#include <algorithm>
#include <iterator>

namespace sumpbook::compose {
namespace {

using document::Align;
using document::Array;
using document::Cell;
using document::Document;
using document::Object;
using document::Severity;
using document::Value;

const std::string& name_of(const Bike& bike) { return bike.details.value.name; }

/// "2 doubts", "changed in two places", "1 file", or nothing.
Cell remark_cell(const LogEntry& entry) {
    if (entry.in_conflict()) return {"changed in two places", Severity::danger};
    const auto doubts = entry.value.doubts.size();
    if (doubts > 0) return {doubts == 1 ? "1 doubt" : std::to_string(doubts) + " doubts", Severity::caution};
    const auto files = entry.value.attachments.size();
    if (files == 0) return {};
    return {files == 1 ? "1 file" : std::to_string(files) + " files", {}};
}

std::vector<Cell> row_of(const BikeEntry& one, bool with_bike) {
    const Entry& entry = one.entry->value;
    const auto cost = cost_of(entry);
    std::vector<Cell> row{{one.entry->id, {}}, {iso_text(entry.date), {}}};
    if (with_bike) row.push_back({name_of(*one.bike), {}});
    row.push_back({words_or_dash(entry.odometer), {}});
    row.push_back({kind_words(kind_slug(entry.body)), {}});
    row.push_back({entry_words(entry), {}});
    row.push_back({cost ? words(*cost) : std::string(), {}});
    row.push_back(remark_cell(*one.entry));
    return row;
}

/// "2026-11-15, 12:00 UTC".
std::string moment_words(const RecordedTime& time) {
    const std::string text = iso_text(time);
    return text.substr(0, 10) + ", " + text.substr(11, 5) + " UTC";
}

std::string day_recorded(const RecordedTime& time) { return iso_text(time).substr(0, 10); }

std::string listed(const std::vector<std::string>& things) {
    std::string text;
    for (const auto& thing : things)
        text += (text.empty() ? "" : ", ") + thing;
    return text;
}

/// The entry that a version mainly stands for: the last one it replaces that is held.
const EntryVersion* replaced_by(const EntryVersion& version, const std::vector<EntryVersion>& all) {
    const EntryVersion* found = nullptr;
    for (const auto& other : all) {
        if (other.entry && std::ranges::find(version.replaces, other.id) != version.replaces.end())
            found = &other;
    }
    return found;
}

std::string version_words(const EntryVersion& version, const std::vector<EntryVersion>& all) {
    if (!version.entry) {
        return "Withdrawn" + (version.reason ? ": " + *version.reason : std::string(", no reason given"));
    }
    const auto* before = replaced_by(version, all);
    if (before == nullptr) return entry_sentence(*version.entry);
    const auto changes = changed_fields(*before->entry, *version.entry);
    return changes.empty() ? "Nothing that is shown here was changed" : listed(changes);
}

/// Ids of the versions that are here, and how many are not.
std::string stands_for_words(const std::vector<std::string>& replaces) {
    std::vector<std::string> things;
    std::ranges::remove_copy(replaces, std::back_inserter(things), not_held);
    const auto others = replaces.size() - things.size();
    if (others > 0)
        things.push_back(others == 1 ? "1 that is not here" : std::to_string(others) + " that are not here");
    return listed(things);
}

document::Table version_table(const std::vector<EntryVersion>& versions) {
    document::Table table{{{"Version", {}}, {"Recorded", {}}, {"Stands for", {}}, {"What it says", {}}}, {}};
    for (const auto& version : versions) {
        table.rows.push_back({Cell{version.id, {}}, Cell{day_recorded(version.recorded), {}},
                              Cell{stands_for_words(version.replaces), {}},
                              Cell{version_words(version, versions), {}}});
    }
    return table;
}

Array ids_json(const std::vector<std::string>& ids) { return {ids.begin(), ids.end()}; }

Object version_json(const std::string& bike, const EntryVersion& version) {
    Object object;
    object.add("id", version.id).add("recorded", iso_text(version.recorded));
    object.add("replaces", ids_json(version.replaces)).add("current", version.current);
    object.add("withdrawn", !version.entry).add("reason", version.reason);
    object.add("entry", version.entry ? Value(entry_json(bike, *version.entry)) : Value());
    return object;
}

Array versions_json(const std::string& bike, const std::vector<EntryVersion>& versions) {
    Array items;
    for (const auto& version : versions)
        items.emplace_back(version_json(bike, version));
    return items;
}

/// "fuel.csv, line 12, volume: "-3,1" as typed; expected a volume above 0."
std::string doubt_words(const Doubt& doubt) {
    std::string where = doubt.file;
    if (doubt.line != 0) where += ", line " + std::to_string(doubt.line);
    where += (where.empty() ? "" : ", ") + doubt.column;
    return where + ": \"" + doubt.text + "\" as typed; expected " + doubt.expected + ".";
}

void add_odd_things(Document& text, const LogEntry& entry) {
    if (entry.in_conflict()) {
        text.sentence(
            "This entry was changed in two places; the change recorded last is shown and counts. To settle it: "
            "sumpbook log settle " +
                entry.id,
            Severity::danger);
    }
    if (!entry.value.doubts.empty()) text.heading("In doubt", 3);
    for (const auto& doubt : entry.value.doubts)
        text.sentence(doubt_words(doubt), Severity::caution);
    const auto& imported = entry.value.imported;
    if (imported)
        text.sentence("Imported from " + imported->file + " on " + spelled_text(imported->date) + ".");
}

JobFasteners fasteners_in(const Bike& bike, const LogEntry& entry) {
    return {review::fasteners_of(bike, entry), review::marks_seen_in(bike, entry)};
}

} // namespace

Object log_json(const std::vector<BikeEntry>& entries) {
    Array items;
    for (const auto& one : entries)
        items.emplace_back(log_entry_json(name_of(*one.bike), *one.entry));
    return document::list_of(std::move(items));
}

Document log_text(const std::vector<BikeEntry>& entries) {
    Document text;
    if (entries.empty()) return text.sentence("No entry fits.");
    const bool with_bike =
        std::ranges::any_of(entries, [&](const auto& one) { return one.bike != entries.front().bike; });
    document::Table table{{{"Entry", {}}, {"Date", {}}}, {}};
    if (with_bike) table.columns.push_back({"Bike", {}});
    table.columns.insert(
        table.columns.end(),
        {{"Odometer", Align::right}, {"Kind", {}}, {"What", {}}, {"Cost", Align::right}, {"", {}}});
    for (const auto& one : entries)
        table.rows.push_back(row_of(one, with_bike));
    return text.table(std::move(table));
}

Value entry_page_json(const Bike& bike, const LogEntry& entry, const std::vector<EntryVersion>& versions,
                      const std::vector<KeptFile>& files) {
    Object object = document::result();
    object.add("entry", log_entry_json(name_of(bike), entry));
    object.add("versions", versions_json(name_of(bike), versions));
    object.add("files", kept_files_json(files));
    return object.add("fasteners", fasteners_json(fasteners_in(bike, entry)));
}

Document entry_page_text(const Bike& bike, const LogEntry& entry, const std::vector<EntryVersion>& versions,
                         const std::vector<KeptFile>& files) {
    Document text;
    text.heading(entry.id + ", " + kind_words(kind_slug(entry.value.body)) + " of " + name_of(bike));
    document::Facts facts = entry_facts(entry.value);
    for (std::size_t i = 0; i < files.size(); ++i)
        facts.lines.emplace_back(files.size() == 1 ? "File" : "File " + std::to_string(i + 1),
                                 kept_file_words(files[i]));
    facts.lines.emplace_back("Recorded", moment_words(entry.recorded));
    text.facts(std::move(facts));
    text.append(fasteners_text(fasteners_in(bike, entry)));
    add_odd_things(text, entry);
    if (versions.size() > 1) text.heading("Versions", 3).table(version_table(versions));
    return text;
}

Value withdrawn_page_json(const std::string& bike, const std::vector<EntryVersion>& versions) {
    Object object = document::result();
    object.add("entry", nullptr).add("versions", versions_json(bike, versions));
    return object;
}

Document withdrawn_page_text(const std::string& bike, const std::vector<EntryVersion>& versions) {
    Document text;
    text.heading("A withdrawn entry of " + bike);
    text.sentence("This entry counts no more; what it said is kept.");
    return text.table(version_table(versions));
}

} // namespace sumpbook::compose
