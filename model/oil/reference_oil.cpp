// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/oil/reference_oil.h"

#include "model/oil/words.h"

#include <algorithm>

namespace sumpbook::oil {
namespace {

std::vector<const LogEntry*> virgin_samples(const Bike& bike) {
    std::vector<const LogEntry*> found;
    for (const LogEntry* entry : entries_of<Sample>(bike)) {
        if (std::get<Sample>(entry->value.body).use == OilUse::virgin) found.push_back(entry);
    }
    return found;
}

bool has_text(const std::optional<std::string>& text, const std::optional<std::string>& wanted) {
    return text && wanted && !wanted->empty() && same_word(*text, *wanted);
}

const LogEntry* by_number(const std::vector<const LogEntry*>& samples, const OilChange& change) {
    for (const LogEntry* entry : samples) {
        if (has_text(std::get<Sample>(entry->value.body).number, change.virgin_sample)) return entry;
        if (change.virgin_sample && entry->id == *change.virgin_sample) return entry;
    }
    return nullptr;
}

const LogEntry* by_oil_name(const std::vector<const LogEntry*>& samples, const OilChange& change,
                            const Date& until) {
    const LogEntry* best = nullptr;
    for (const LogEntry* entry : samples) {
        if (!has_text(std::get<Sample>(entry->value.body).oil_name, change.oil_name)) continue;
        if (best == nullptr || entry->value.date <= until) best = entry;
    }
    return best;
}

const LogEntry* new_oil_sample(const Garage& garage, const Bike& bike, const OilChange& change,
                               const Date& until) {
    std::vector<const Bike*> order{&bike};
    for (const Bike& other : garage.bikes) {
        if (&other != &bike) order.push_back(&other);
    }
    for (const Bike* each : order) {
        if (const LogEntry* found = by_number(virgin_samples(*each), change)) return found;
    }
    for (const Bike* each : order) {
        if (const LogEntry* found = by_oil_name(virgin_samples(*each), change, until)) return found;
    }
    return nullptr;
}

std::optional<Decimal> grade_middle(const std::optional<SaeGrade>& grade) {
    if (!grade) return std::nullopt;
    const auto band = band_of(*grade);
    return band ? middle_mm2_s(*band) : std::nullopt;
}

} // namespace

std::optional<SampleValue> ReferenceOil::value(std::string_view quantity) const {
    const auto found = std::find_if(values.begin(), values.end(),
                                    [&](const SampleValue& value) { return value.quantity == quantity; });
    if (found != values.end()) return *found;
    const auto middle = quantity == "kv100" ? grade_middle(grade) : std::nullopt;
    if (!middle) return std::nullopt;
    return SampleValue{"kv100", ValueState::measured, *middle, "mm2/s", std::nullopt};
}

bool ReferenceOil::is_grade_middle(std::string_view quantity) const {
    const bool measured = std::any_of(values.begin(), values.end(),
                                      [&](const SampleValue& value) { return value.quantity == quantity; });
    return !measured && value(quantity).has_value();
}

std::string ReferenceOil::named(std::string_view quantity) const {
    if (is_grade_middle(quantity))
        return "the middle of SAE " + text_of(*grade) + " (no sample of the new oil)";
    if (!value(quantity) || !sample) return {};
    return "the new oil's own sample " + *sample;
}

ReferenceOil reference_oil(const Garage& garage, const Bike& bike, const OilChange* change,
                           const Date& until) {
    ReferenceOil reference;
    if (change == nullptr) return reference;
    if (change->sae_grade) {
        if (const auto grade = read_sae_grade(*change->sae_grade)) reference.grade = *grade;
    }
    if (const LogEntry* found = new_oil_sample(garage, bike, *change, until)) {
        reference.sample = sample_label(*found);
        reference.values = std::get<Sample>(found->value.body).values;
    }
    return reference;
}

std::string sample_label(const LogEntry& sample) {
    const auto& number = std::get<Sample>(sample.value.body).number;
    return number && !number->empty() ? *number : sample.id;
}

} // namespace sumpbook::oil
