// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/oil/fills.h"

#include <algorithm>
#include <set>

namespace sumpbook::oil {
namespace {

std::set<std::string> compartments_of(const Bike& bike) {
    std::set<std::string> slugs;
    for (const LogEntry& entry : bike.log) {
        if (const auto* sample = std::get_if<Sample>(&entry.value.body)) slugs.insert(sample->compartment);
        if (const auto* change = std::get_if<OilChange>(&entry.value.body)) slugs.insert(change->compartment);
    }
    return slugs;
}

bool is_fill_of(const usage::OilFill& fill, const LogEntry& entry, const Sample& sample) {
    if (sample.oil_change_date) return fill.oil_change_id && fill.from == *sample.oil_change_date;
    return !fill.oil_change_id || fill.from < entry.value.date;
}

std::optional<usage::OilFill> find_fill(const OilRecord& record, const LogEntry& entry,
                                        const Sample& sample) {
    std::optional<usage::OilFill> found;
    for (const auto& fill : record.fills_of(sample.compartment)) {
        if (is_fill_of(fill, entry, sample)) found = fill;
    }
    return found;
}

std::optional<Distance> distance_on_oil(const OilRecord& record, const FilledSample& filled) {
    if (filled.sample->distance_on_oil) {
        if (const auto typed = distance_of(*filled.sample->distance_on_oil)) return *typed;
    }
    if (filled.oil_change_entry == nullptr || !filled.position) return std::nullopt;
    const auto start = record.odometer.at_entry(*filled.oil_change_entry);
    if (!start || *filled.position < *start) return std::nullopt;
    return *filled.position - *start;
}

std::optional<Decimal> hours_on_oil(const FilledSample& filled) {
    if (filled.sample->hours_on_oil) return filled.sample->hours_on_oil;
    if (filled.oil_change_entry == nullptr) return std::nullopt;
    const auto& start = filled.oil_change_entry->value.hours;
    const auto& end = filled.entry->value.hours;
    if (!start || !end || *end < *start) return std::nullopt;
    const auto hours = subtract(*end, *start);
    return hours ? std::optional<Decimal>(*hours) : std::nullopt;
}

} // namespace

OilRecord OilRecord::of(const Garage& garage, const Bike& bike) {
    auto odometer = usage::OdometerSeries::of(bike);
    auto hours = usage::EngineHours::of(bike, odometer);
    OilRecord record{&garage, &bike, std::move(odometer), std::move(hours), {}};
    for (const std::string& compartment : compartments_of(bike))
        record.fills[compartment] = usage::oil_fills(bike, record.odometer, compartment);
    return record;
}

const std::vector<usage::OilFill>& OilRecord::fills_of(std::string_view compartment) const {
    static const std::vector<usage::OilFill> none;
    const auto found = fills.find(compartment);
    return found == fills.end() ? none : found->second;
}

FilledSample fill_of(const OilRecord& record, const LogEntry& sample) {
    FilledSample filled;
    filled.entry = &sample;
    filled.sample = &std::get<Sample>(sample.value.body);
    filled.fill = find_fill(record, sample, *filled.sample);
    if (filled.fill && filled.fill->oil_change_id) {
        filled.oil_change_entry = find_entry(*record.bike, *filled.fill->oil_change_id);
        if (filled.oil_change_entry != nullptr)
            filled.oil_change = &std::get<OilChange>(filled.oil_change_entry->value.body);
    }
    filled.position = record.odometer.at_entry(sample);
    filled.distance_on_oil = distance_on_oil(record, filled);
    filled.hours_on_oil = hours_on_oil(filled);
    return filled;
}

std::vector<const LogEntry*> used_samples(const Bike& bike, std::string_view compartment) {
    std::vector<const LogEntry*> found;
    for (const LogEntry* entry : entries_of<Sample>(bike)) {
        const auto& sample = std::get<Sample>(entry->value.body);
        if (sample.use == OilUse::used && sample.compartment == compartment) found.push_back(entry);
    }
    return found;
}

} // namespace sumpbook::oil
