// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/log_versions.h"

#include "model/garage/versions.h"
#include "reports/compose/entry_cells.h"

#include <algorithm>
#include <map>
#include <set>

namespace sumpbook::compose {
namespace {

bool replaces(const NamedRecord& later, const NamedRecord& earlier) {
    return later.subject == earlier.subject &&
           std::ranges::find(later.record.replaces, earlier.name) != later.record.replaces.end();
}

/// Whether two records share a replaced version, held here or not.
bool replace_the_same(const NamedRecord& a, const NamedRecord& b) {
    return a.subject == b.subject && std::ranges::any_of(a.record.replaces, [&](const RecordName& name) {
               return name.index != no_version &&
                      std::ranges::find(b.record.replaces, name) != b.record.replaces.end();
           });
}

std::vector<const NamedRecord*> hanging_together(const std::vector<NamedRecord>& records,
                                                 const NamedRecord& start) {
    std::vector<const NamedRecord*> found{&start};
    for (std::size_t done = 0; done < found.size(); ++done) {
        for (const auto& record : records) {
            const bool linked = replaces(record, *found[done]) || replaces(*found[done], record) ||
                                replace_the_same(record, *found[done]);
            if (linked && std::ranges::find(found, &record) == found.end()) found.push_back(&record);
        }
    }
    std::ranges::stable_sort(found, {}, [](const NamedRecord* one) { return one->record.recorded; });
    return found;
}

EntryVersion version_of(const NamedRecord& named, const std::vector<const NamedRecord*>& all) {
    EntryVersion version{.id = named.id,
                         .recorded = named.record.recorded,
                         .replaces = {},
                         .entry = {},
                         .reason = {},
                         .current = true};
    for (const auto& name : named.record.replaces) {
        if (name.index == no_version) continue;
        const auto held = std::ranges::find(all, name, &NamedRecord::name);
        version.replaces.push_back(held == all.end() ? std::string(not_held) : (*held)->id);
    }
    if (const auto* entry = std::get_if<Entry>(&named.record.content)) version.entry = *entry;
    if (const auto* gone = std::get_if<Withdrawal>(&named.record.content)) version.reason = gone->reason;
    version.current = std::ranges::none_of(all, [&](const auto* other) { return replaces(*other, named); });
    return version;
}

/// The files that `one` holds and `other` does not.
void add_files(const Entry& one, const Entry& other, const std::string& what,
               std::vector<std::string>& changes) {
    for (const auto& file : one.attachments) {
        const auto& others = other.attachments;
        if (std::ranges::find(others, file.part_hash, &AttachmentRef::part_hash) == others.end())
            changes.push_back(what + file.name);
    }
}

bool is_of_entry(const NamedRecord& named) { return std::holds_alternative<Entry>(named.record.content); }

} // namespace

std::vector<EntryVersion> entry_versions(const std::vector<NamedRecord>& records, std::string_view id) {
    const auto start = std::ranges::find(records, id, &NamedRecord::id);
    if (start == records.end()) return {};
    const auto all = hanging_together(records, *start);
    if (std::ranges::none_of(all, [](const auto* one) { return is_of_entry(*one); })) return {};
    std::vector<EntryVersion> versions;
    for (const auto* one : all)
        versions.push_back(version_of(*one, all));
    return versions;
}

std::vector<std::string> changed_fields(const Entry& before, const Entry& after) {
    const auto old_facts = entry_facts(before).lines;
    const auto new_facts = entry_facts(after).lines;
    const auto text_in = [](const auto& facts, const std::string& label) -> std::optional<std::string> {
        const auto found = std::ranges::find_if(facts, [&](const auto& fact) { return fact.first == label; });
        return found == facts.end() ? std::nullopt : std::optional(found->second);
    };
    std::vector<std::string> changes;
    for (const auto& [label, text] : new_facts) {
        const auto old_text = text_in(old_facts, label);
        if (!old_text) changes.push_back(label + " added: " + text);
        if (old_text && *old_text != text) changes.push_back(label + " " + text + ", before " + *old_text);
    }
    for (const auto& [label, text] : old_facts) {
        if (!text_in(new_facts, label)) changes.push_back(label + " taken out, before " + text);
    }
    add_files(after, before, "File added: ", changes);
    add_files(before, after, "File taken out: ", changes);
    return changes;
}

} // namespace sumpbook::compose
