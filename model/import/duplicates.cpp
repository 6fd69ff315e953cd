// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/import/duplicates.h"

#include "model/import/entry_text.h"

#include <algorithm>

namespace sumpbook::import {
namespace {

/// What an entry says, without where it comes from, how it is stored and what is doubted about it.
Entry content_of(Entry entry) {
    entry.imported.reset();
    entry.attachments.clear();
    entry.doubts.clear();
    return entry;
}

bool doubts_agree(const Entry& a, const Entry& b) {
    return std::ranges::all_of(a.doubts, [&](const Doubt& doubt) {
        return doubt.column.empty() || std::ranges::all_of(b.doubts, [&](const Doubt& other) {
                   return other.column != doubt.column || other.text == doubt.text;
               });
    });
}

/// Within one file every doubt is fresh: the same columns must be doubted, with the same texts.
std::string key_with_doubts(const Entry& entry) {
    std::string key = entry_text(entry);
    for (const auto& doubt : entry.doubts)
        key += '\n' + doubt.column + '\n' + (doubt.column.empty() ? std::string() : doubt.text);
    return key;
}

std::optional<Distance> odometer_of(const Entry& entry) {
    if (!entry.odometer) return std::nullopt;
    const auto distance = distance_of(*entry.odometer);
    return distance ? std::optional(*distance) : std::nullopt;
}

/// What the event of an entry is known by; empty for kinds of which many fall on one day.
std::string event_key(const Entry& entry) {
    if (const auto* sample = std::get_if<Sample>(&entry.body))
        return sample->number ? "sample " + *sample->number : std::string();
    const bool by_odometer =
        std::holds_alternative<Fuel>(entry.body) || std::holds_alternative<Reading>(entry.body);
    const auto odometer = odometer_of(entry);
    if (!by_odometer || !odometer) return {};
    return iso_text(entry.date) + " " + std::string(kind_slug(entry.body)) + " " +
           std::to_string(odometer->micrometres());
}

} // namespace

bool says_the_same(const Entry& a, const Entry& b) {
    if (a.date != b.date || a.body.index() != b.body.index()) return false;
    return content_of(a) == content_of(b) && doubts_agree(a, b);
}

bool seems_the_same(const Entry& a, const Entry& b) {
    const std::string key = event_key(a);
    return !key.empty() && key == event_key(b) && !says_the_same(a, b);
}

KnownEntries::KnownEntries(const Bike& bike, const std::vector<NamedRecord>& records) {
    for (const auto& logged : bike.log) {
        const auto place = std::make_shared<const Place>(
            Place{.entry = logged.value,
                  .known = {.id = logged.id, .line = {}, .corrected_to = {}, .withdrawn = false}});
        in_garage_.emplace(entry_text(logged.value), place);
        if (const auto event = event_key(logged.value); !event.empty()) by_event_.emplace(event, place);
    }
    add_earlier_versions(bike, records);
}

void KnownEntries::add_earlier_versions(const Bike& bike, const std::vector<NamedRecord>& records) {
    std::map<std::string, std::string> now; // the version in use, by the id of any
    for (const auto& logged : bike.log) {
        now.emplace(logged.id, logged.id);
        for (const auto& id : logged.earlier_ids)
            now.emplace(id, logged.id);
    }
    for (const auto& record : records) {
        const auto* entry = std::get_if<Entry>(&record.record.content);
        if (entry == nullptr || record.subject != bike.id) continue;
        const auto current = now.find(record.id);
        const bool withdrawn = current == now.end();
        if (!withdrawn && current->second == record.id) continue;
        Known known{.id = record.id, .line = {}, .corrected_to = {}, .withdrawn = withdrawn};
        if (!withdrawn) known.corrected_to = current->second;
        earlier_.emplace(entry_text(*entry), std::make_shared<const Place>(
                                                 Place{.entry = *entry, .known = std::move(known)}));
    }
}

void KnownEntries::add(const Entry& entry, std::size_t line) {
    const auto place = std::make_shared<const Place>(
        Place{.entry = entry,
              .known = {.id = {}, .line = line, .corrected_to = {}, .withdrawn = false}});
    in_file_.emplace(key_with_doubts(entry), place);
    if (const auto event = event_key(entry); !event.empty()) by_event_.emplace(event, place);
}

std::optional<Known> KnownEntries::same_as(const Entry& entry) const {
    const auto said = [&entry](const auto& places, const std::string& key) -> std::optional<Known> {
        const auto [first, last] = places.equal_range(key);
        const auto found = std::find_if(
            first, last, [&](const auto& place) { return says_the_same(place.second->entry, entry); });
        return found == last ? std::nullopt : std::optional(found->second->known);
    };
    const std::string key = entry_text(entry);
    if (const auto recorded = said(in_garage_, key)) return recorded;
    if (const auto earlier = said(earlier_, key)) return earlier;
    return said(in_file_, key_with_doubts(entry));
}

std::optional<Known> KnownEntries::similar_to(const Entry& entry) const {
    const auto event = event_key(entry);
    if (event.empty()) return std::nullopt;
    const auto [first, last] = by_event_.equal_range(event);
    const auto found = std::find_if(
        first, last, [&](const auto& known) { return seems_the_same(known.second->entry, entry); });
    return found == last ? std::nullopt : std::optional(found->second->known);
}

} // namespace sumpbook::import
