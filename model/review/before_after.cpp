// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/review/before_after.h"

#include "model/oil/quantities.h"
#include "model/oil/wear_rate.h"
#include "model/stats/median.h"
#include "model/stats/power.h"
#include "model/usage/fuel.h"
#include "model/usage/oil_use.h"

#include <algorithm>
#include <array>
#include <map>
#include <tuple>

namespace sumpbook::review {
namespace {

char lowered(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; }

bool holds(std::string_view text, std::string_view part) {
    const auto found = std::ranges::search(text, part, {}, lowered, lowered);
    return part.empty() || !found.empty();
}

/// The entries of the cut's day that stand before its modification.
bool is_before(const Bike& bike, const LogEntry& entry, const Cut& cut) {
    if (entry.value.date != cut.at || !cut.entry_id) return entry.value.date < cut.at;
    const auto at = std::ranges::find(bike.log, *cut.entry_id, &LogEntry::id);
    return at != bike.log.end() && &entry < &*at;
}

bool wears_down(std::string_view quantity) {
    constexpr std::array<std::string_view, 3> wearing{"pad", "tread", "chain"};
    return std::ranges::find(wearing, quantity) != wearing.end();
}

std::vector<Compared> measures(const Bike& bike, const Cut& cut) {
    std::map<std::tuple<std::string, std::string, std::string>, Compared> series;
    for (const auto* entry : entries_of<Measure>(bike)) {
        const auto& measure = std::get<Measure>(entry->value.body);
        if (!measure.value) continue;
        auto& one = series[{measure.quantity, measure.at.value_or(""), measure.unit}];
        one.what = measure.quantity;
        one.at = measure.at;
        one.unit = measure.unit;
        one.wears = wears_down(measure.quantity);
        one.digits = std::max(one.digits, measure.value->scale());
        (is_before(bike, *entry, cut) ? one.before : one.after).push_back(measure.value->to_double());
    }
    std::vector<Compared> found;
    for (auto& [key, one] : series)
        found.push_back(std::move(one));
    return found;
}

/// A stretch of days counts on a side only as a whole; it may end on the day of the cut.
void put(Compared& series, const Date& from, const Date& until, const Cut& cut, double value) {
    if (until <= cut.at)
        series.before.push_back(value);
    else if (from >= cut.at)
        series.after.push_back(value);
    else
        ++series.left_out;
}

Compared fuel(const Bike& bike, const usage::OdometerSeries& odometer, const Cut& cut) {
    Compared series{.kind = ComparedKind::fuel, .what = {}, .at = {}, .unit = "L/100 km", .digits = 2};
    for (const auto& span : usage::fuel_use(bike, odometer).spans) {
        if (span.consumption) put(series, span.from, span.to, cut, span.consumption->litres_per_100km);
    }
    return series;
}

Date last_day(const usage::OilFill& fill) {
    Date last = fill.from;
    for (const auto& event : fill.events)
        last = std::max(last, event.date);
    return last;
}

Compared oil_use(const Bike& bike, const usage::OdometerSeries& odometer, const Cut& cut) {
    Compared series{.kind = ComparedKind::oil_use, .what = {}, .at = {}, .unit = "L/1 000 km", .digits = 3};
    for (const auto& use : usage::oil_use(bike, odometer).fills) {
        if (use.litres_per_1000km && !use.fill.run_in)
            put(series, use.fill.from, last_day(use.fill), cut, *use.litres_per_1000km);
    }
    return series;
}

/// The last engine sample of each fill, oldest first.
std::vector<oil::FilledSample> last_samples(const oil::OilRecord& record, const Bike& bike) {
    const auto used = oil::used_samples(bike, "engine");
    if (used.empty()) return {};
    const auto last = oil::fill_of(record, *used.back());
    auto samples = oil::history_of(record, last).earlier_fills;
    samples.push_back(last);
    return samples;
}

Compared wear(const oil::OilRecord& record, const std::vector<oil::FilledSample>& samples,
              std::string_view metal, const Cut& cut) {
    Compared series{.kind = ComparedKind::wear,
                    .what = std::string(metal),
                    .at = {},
                    .unit = "mg/kg in 1 000 km",
                    .digits = 2};
    const auto fitted = oil::engine_fitted(record);
    for (const auto& sample : samples) {
        const auto* value = oil::value_in(*sample.sample, metal);
        if (!sample.fill || value == nullptr) continue;
        const bool below = value->state == ValueState::below;
        if (below || oil::comparability(sample, fitted) != oil::Comparability::yes) {
            ++series.left_out;
            continue;
        }
        const auto history = oil::wear_history(record, sample, oil::history_of(record, sample), metal);
        if (history.now)
            put(series, sample.fill->from, sample.entry->value.date, cut, history.now->per_1000km());
    }
    return series;
}

Shift shift_of(const Compared& series) {
    if (!series.test) return Shift::one_sided;
    if (series.test->smallest_p > stats::usual_level) return Shift::too_few;
    if (series.test->p > stats::usual_level || series.test->shift == 0) return Shift::not_seen;
    return series.test->shift < 0 ? Shift::lower : Shift::higher;
}

void complete(Compared& series) {
    series.median_before = stats::median(series.before);
    series.median_after = stats::median(series.after);
    series.test = stats::compare_two_groups(series.before, series.after);
    series.shift = shift_of(series);
}

} // namespace

std::string_view slug(ComparedKind kind) {
    constexpr std::array<std::string_view, 4> words{"measure", "fuel", "oil-use", "wear"};
    return words.at(static_cast<std::size_t>(kind));
}

std::string_view slug(Shift shift) {
    constexpr std::array<std::string_view, 5> words{"one-sided", "too-few", "not-seen", "lower", "higher"};
    return words.at(static_cast<std::size_t>(shift));
}

std::vector<Compared> before_and_after(const Garage& garage, const Bike& bike, const Cut& cut) {
    const auto odometer = usage::OdometerSeries::of(bike);
    auto all = measures(bike, cut);
    all.push_back(fuel(bike, odometer, cut));
    all.push_back(oil_use(bike, odometer, cut));
    const auto record = oil::OilRecord::of(garage, bike);
    const auto samples = last_samples(record, bike);
    for (const auto& quantity : oil::sample_quantities()) {
        const auto& metal = quantity.slug;
        if (!oil::is_wear_metal(metal)) continue;
        if (metal != "Pb" || bike.details.value.fuel != FuelType::leaded_petrol)
            all.push_back(wear(record, samples, metal, cut));
    }
    std::erase_if(all, [](const Compared& series) { return series.before.empty() && series.after.empty(); });
    std::ranges::for_each(all, complete);
    return all;
}

std::vector<const LogEntry*> modifications_like(const Bike& bike, std::string_view typed) {
    const auto all = entries_of<Modification>(bike);
    if (const auto* entry = find_entry(bike, typed);
        entry != nullptr && std::holds_alternative<Modification>(entry->value.body))
        return {entry};
    std::vector<const LogEntry*> like;
    for (const auto* entry : all) {
        if (holds(std::get<Modification>(entry->value.body).what, typed)) like.push_back(entry);
    }
    return like;
}

} // namespace sumpbook::review
