// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/oil/history.h"

#include "model/oil/precision.h"
#include "model/oil/quantities.h"

#include <algorithm>

namespace sumpbook::oil {
namespace {

bool same_fill(const FilledSample& a, const FilledSample& b) {
    return a.fill && b.fill && a.fill->oil_change_id == b.fill->oil_change_id;
}

void put_among_fills(std::vector<FilledSample>& fills, const FilledSample& sample) {
    if (!sample.fill) return;
    if (!fills.empty() && same_fill(fills.back(), sample))
        fills.back() = sample;
    else
        fills.push_back(sample);
}

std::optional<Decimal> hours_between(const FilledSample& earlier, const FilledSample& later) {
    auto from = earlier.hours_on_oil;
    auto to = later.hours_on_oil;
    if (!from || !to) {
        from = earlier.entry->value.hours;
        to = later.entry->value.hours;
    }
    if (!from || !to) return std::nullopt;
    const auto hours = subtract(*to, *from);
    return hours ? std::optional<Decimal>(*hours) : std::nullopt;
}

std::optional<Distance> distance_between(const FilledSample& earlier, const FilledSample& later) {
    if (earlier.distance_on_oil && later.distance_on_oil)
        return *later.distance_on_oil - *earlier.distance_on_oil;
    if (earlier.position && later.position) return *later.position - *earlier.position;
    return std::nullopt;
}

bool laboratories_differ(const FilledSample& earlier, const FilledSample& later) {
    const auto& a = earlier.sample->laboratory;
    const auto& b = later.sample->laboratory;
    return a && b && *a != *b;
}

/// The engine fitted last, up to and with a day where one is given.
const LogEntry* fitted_engine(const OilRecord& record, const std::optional<Date>& until) {
    const LogEntry* last = nullptr;
    for (const LogEntry* entry : entries_of<Fit>(*record.bike)) {
        const bool in_time = !until || entry->value.date <= *until;
        if (std::get<Fit>(entry->value.body).slot == "engine" && in_time) last = entry;
    }
    return last;
}

} // namespace

SampleHistory history_of(const OilRecord& record, const FilledSample& sample) {
    SampleHistory history;
    std::vector<FilledSample> fills;
    for (const LogEntry* entry : used_samples(*record.bike, sample.sample->compartment)) {
        if (entry == sample.entry) break;
        FilledSample earlier = fill_of(record, *entry);
        put_among_fills(fills, earlier);
        history.previous = std::move(earlier);
    }
    if (history.previous && same_fill(*history.previous, sample)) history.previous_in_fill = history.previous;
    std::copy_if(fills.begin(), fills.end(), std::back_inserter(history.earlier_fills),
                 [&](const FilledSample& each) { return !same_fill(each, sample); });
    return history;
}

std::optional<BetweenSamples> between(const OilRecord& record, const FilledSample& earlier,
                                      const FilledSample& later) {
    BetweenSamples result;
    result.distance = distance_between(earlier, later);
    result.laboratories_differ = laboratories_differ(earlier, later);
    if (const auto hours = hours_between(earlier, later)) {
        result.time = {*hours, Decimal{1}};
        return result;
    }
    if (!result.distance) return std::nullopt;
    const Decimal usual_speed{usage::usual_km_an_hour};
    const Decimal speed = record.bike->details.value.average_speed_km_h.value_or(usual_speed);
    result.time = {in_unit(*result.distance, DistanceUnit::km, 9), speed > Decimal{0} ? speed : usual_speed};
    return result;
}

const SampleValue* value_in(const Sample& sample, std::string_view quantity) {
    const auto found = std::find_if(sample.values.begin(), sample.values.end(),
                                    [&](const SampleValue& value) { return value.quantity == quantity; });
    return found == sample.values.end() ? nullptr : &*found;
}

std::optional<Decimal> measured_mg_kg(const SampleValue* value) {
    if (value == nullptr || value->state != ValueState::measured) return std::nullopt;
    return in_oil_unit(value->number, value->unit.empty() ? "mg/kg" : value->unit, "mg/kg");
}

bool silicon_fell_with_each_fill(const FilledSample& sample, const SampleHistory& history) {
    if (history.earlier_fills.empty()) return false;
    const auto silicon = [](const FilledSample& one) { return measured_mg_kg(value_in(*one.sample, "Si")); };
    auto later = silicon(sample);
    for (auto fill = history.earlier_fills.rbegin(); fill != history.earlier_fills.rend(); ++fill) {
        const auto earlier = silicon(*fill);
        if (!earlier || !later || *later >= *earlier) return false;
        later = earlier;
    }
    return true;
}

bool wear_metals_fell(const FilledSample& sample, const SampleHistory& history) {
    if (!history.previous_in_fill) return false;
    bool any = false;
    for (const SampleValue& now : sample.sample->values) {
        const SampleValue* before = value_in(*history.previous_in_fill->sample, now.quantity);
        if (!is_wear_metal(now.quantity) || before == nullptr) continue;
        if (now.state != ValueState::measured || before->state != ValueState::measured) continue;
        const double from = before->number.to_double();
        const double to = now.number.to_double();
        const auto precision = element_precision(now.quantity, (from + to) / 2);
        if (!precision || from - to < precision->repeatability) return false;
        any = true;
    }
    return any;
}

std::optional<Date> engine_fitted(const OilRecord& record) {
    const LogEntry* fitted = fitted_engine(record, std::nullopt);
    return fitted == nullptr ? std::nullopt : std::optional(fitted->value.date);
}

Comparability comparability(const FilledSample& sample, const std::optional<Date>& fitted) {
    if (sample.fill->run_in) return Comparability::running_in;
    return fitted && sample.fill->from < *fitted ? Comparability::other_engine : Comparability::yes;
}

std::optional<double> engine_hours(const OilRecord& record, const FilledSample& sample) {
    if (!sample.position) return std::nullopt;
    const double now = record.hours.hours_at(*sample.position);
    const LogEntry* fitted = fitted_engine(record, sample.entry->value.date);
    if (fitted == nullptr) return now;
    const auto start = record.odometer.at_entry(*fitted);
    if (!start) return std::nullopt;
    const auto& fit = std::get<Fit>(fitted->value.body);
    double before = 0;
    if (fit.hours_before)
        before = fit.hours_before->to_double();
    else if (fit.distance_before) {
        const auto run = distance_of(*fit.distance_before);
        if (run) before = record.hours.hours_at(*run) - record.hours.hours_at(Distance{});
    }
    return now - record.hours.hours_at(*start) + before;
}

} // namespace sumpbook::oil
