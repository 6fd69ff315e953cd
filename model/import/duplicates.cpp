// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/import/duplicates.h"

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
bool doubts_are_equal(const Entry& a, const Entry& b) {
    const auto same = [](const Doubt& x, const Doubt& y) {
        return x.column == y.column && (x.column.empty() || x.text == y.text);
    };
    return std::ranges::equal(a.doubts, b.doubts, same);
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

KnownEntries::KnownEntries(const Bike& bike) {
    for (const auto& logged : bike.log) {
        const Place place{.entry = logged.value, .known = {.id = logged.id, .line = {}}};
        by_key_.emplace(key_of(logged.value), place);
        if (const auto event = event_key(logged.value); !event.empty()) by_event_.emplace(event, place);
    }
}

std::string KnownEntries::key_of(const Entry& entry) {
    std::string key = iso_text(entry.date) + " " + std::string(kind_slug(entry.body));
    if (const auto odometer = odometer_of(entry)) key += " " + std::to_string(odometer->micrometres());
    if (entry.paid) key += " " + text_of(*entry.paid);
    if (const auto* sample = std::get_if<Sample>(&entry.body)) key += " " + sample->number.value_or("");
    return key;
}

void KnownEntries::add(const Entry& entry, std::size_t line) {
    const Place place{.entry = entry, .known = {.id = {}, .line = line}};
    by_key_.emplace(key_of(entry), place);
    if (const auto event = event_key(entry); !event.empty()) by_event_.emplace(event, place);
}

std::optional<Known> KnownEntries::same_as(const Entry& entry) const {
    const auto [first, last] = by_key_.equal_range(key_of(entry));
    const auto found = std::find_if(first, last, [&](const auto& place) {
        const auto& [earlier, known] = place.second;
        return says_the_same(earlier, entry) && (!known.line || doubts_are_equal(earlier, entry));
    });
    return found == last ? std::nullopt : std::optional(found->second.known);
}

std::optional<Known> KnownEntries::similar_to(const Entry& entry) const {
    const auto event = event_key(entry);
    if (event.empty()) return std::nullopt;
    const auto [first, last] = by_event_.equal_range(event);
    const auto found = std::find_if(
        first, last, [&](const auto& known) { return seems_the_same(known.second.entry, entry); });
    return found == last ? std::nullopt : std::optional(found->second.known);
}

} // namespace sumpbook::import
