// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/history_corrections.h"

#include "reports/compose/entry_words.h"
#include "reports/compose/log_versions.h"

#include <algorithm>
#include <set>

namespace sumpbook::compose {
namespace {

/// Without money and private fields.
Entry open_part(const Entry& whole) {
    Entry entry = whole;
    entry.note.reset();
    entry.place.reset();
    entry.who.reset();
    entry.paid.reset();
    entry.attachments.clear();
    if (auto* fuel = std::get_if<Fuel>(&entry.body)) fuel->price.reset();
    if (auto* sample = std::get_if<Sample>(&entry.body)) sample->laboratory.reset();
    if (auto* work = std::get_if<Work>(&entry.body)) {
        work->labour_price.reset();
        for (auto& part : work->parts)
            part.price.reset();
    }
    return entry;
}

/// The version that this one mainly stands for: the last one it replaces that is held.
const EntryVersion* before(const EntryVersion& version, const std::vector<EntryVersion>& all) {
    const EntryVersion* found = nullptr;
    for (const auto& other : all) {
        if (other.entry && std::ranges::find(version.replaces, other.id) != version.replaces.end())
            found = &other;
    }
    return found;
}

Correction correction_of(const EntryVersion& version, const Entry& earlier) {
    Correction correction{.id = version.id,
                          .recorded = version.recorded,
                          .of = earlier.date,
                          .withdrawn = !version.entry,
                          .earlier =
                              kind_words(kind_slug(earlier.body)) + ", " + entry_words(open_part(earlier)),
                          .changes = {}};
    if (version.entry) correction.changes = changed_fields(open_part(earlier), open_part(*version.entry));
    return correction;
}

bool changes_an_entry(const NamedRecord& named) {
    const bool is_entry = std::holds_alternative<Entry>(named.record.content);
    const bool is_withdrawal = std::holds_alternative<Withdrawal>(named.record.content);
    return !named.record.replaces.empty() && (is_entry || is_withdrawal);
}

} // namespace

std::vector<Correction> corrections_of(const Bike& bike, const std::vector<NamedRecord>& records,
                                       const Date& until) {
    std::vector<Correction> corrections;
    std::set<std::string> seen;
    for (const auto& named : records) {
        if (named.subject != bike.id || !changes_an_entry(named) || seen.contains(named.id)) continue;
        const auto versions = entry_versions(records, named.id);
        for (const auto& version : versions) {
            const auto* earlier = before(version, versions);
            if (!seen.insert(version.id).second || earlier == nullptr || earlier->entry->date > until)
                continue;
            corrections.push_back(correction_of(version, *earlier->entry));
        }
    }
    std::ranges::stable_sort(corrections, {}, &Correction::recorded);
    return corrections;
}

} // namespace sumpbook::compose
