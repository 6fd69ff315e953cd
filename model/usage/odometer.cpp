// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/usage/odometer.h"

#include "model/usage/longest_run.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace sumpbook::usage {
namespace {

std::string named(const OdometerReading& reading) {
    return fmt::format("{} ({}, {})", text_of(reading.written), iso_text(reading.date), reading.entry_id);
}

OdometerFlag falling_flag(const OdometerReading& reading, const OdometerReading* before,
                          const OdometerReading* after) {
    OdometerFlag flag{OdometerFlagKind::falls, reading.entry_id, {}, {}};
    std::string neighbours;
    for (const auto* neighbour : {before, after}) {
        if (neighbour == nullptr) continue;
        flag.against_ids.push_back(neighbour->entry_id);
        neighbours += (neighbours.empty() ? "" : " and ") + named(*neighbour);
    }
    flag.sentence =
        fmt::format("The odometer cannot have read {} beside {}. It is left out of every distance; "
                    "correct the entry that is wrong.",
                    named(reading), neighbours);
    return flag;
}

OdometerFlag leaping_flag(const OdometerReading& before, const OdometerReading& reading) {
    return {
        OdometerFlagKind::leaps,
        reading.entry_id,
        {before.entry_id},
        fmt::format("From {} to {} is more than {} km a day. It counts as it stands; look whether a digit is "
                    "wrong.",
                    named(before), named(reading), in_unit(leap_a_day, DistanceUnit::km, 0).text())};
}

DatedValue dated(const OdometerReading& reading) {
    return {std::chrono::sys_days{reading.date}.time_since_epoch().count(), reading.distance.micrometres()};
}

/// Part/whole of the way from a to b, to the nearest micrometre.
Distance between(Distance a, Distance b, int part, int whole) {
    const double share = static_cast<double>(part) / static_cast<double>(whole);
    return a + Distance::from_micrometres(std::llround(static_cast<double>((b - a).micrometres()) * share));
}

} // namespace

std::string_view slug(OdometerFlagKind kind) {
    return kind == OdometerFlagKind::falls ? "odometer-falls" : "odometer-leaps";
}

OdometerSeries OdometerSeries::of(const Bike& bike) {
    OdometerSeries series;
    for (const auto& entry : bike.log)
        series.add(entry);
    series.choose_accepted();
    return series;
}

void OdometerSeries::add(const LogEntry& entry) {
    const auto* reading = std::get_if<Reading>(&entry.value.body);
    const ClockChange* change =
        reading != nullptr && reading->clock_change ? &*reading->clock_change : nullptr;
    const auto written = change != nullptr ? std::optional(change->old_last) : entry.value.odometer;
    if (!written) return;
    if (const auto distance = dials_.true_distance(*written)) {
        readings_.push_back({entry.id, entry.value.date, *written, *distance, false});
    }
    if (change != nullptr) dials_.change(entry.value.date, *change);
}

void OdometerSeries::choose_accepted() {
    std::vector<DatedValue> values;
    std::ranges::transform(readings_, std::back_inserter(values), dated);
    for (const auto i : longest_run(values, leap_a_day.micrometres()))
        readings_[i].accepted = true;

    const OdometerReading* before = nullptr;
    for (auto reading = readings_.begin(); reading != readings_.end(); ++reading) {
        if (!reading->accepted) {
            const auto after =
                std::find_if(reading, readings_.end(), [](const auto& r) { return r.accepted; });
            flags_.push_back(falling_flag(*reading, before, after == readings_.end() ? nullptr : &*after));
            continue;
        }
        if (before != nullptr && is_leap(dated(*before), dated(*reading), leap_a_day.micrometres()))
            flags_.push_back(leaping_flag(*before, *reading));
        if (before == nullptr || before->date != reading->date) day_ends_.push_back({reading->date, {}});
        day_ends_.back().distance = reading->distance;
        accepted_by_entry_.insert_or_assign(reading->entry_id, reading->distance);
        before = &*reading;
    }
}

std::optional<RecordSpan> OdometerSeries::span() const {
    if (day_ends_.empty()) return std::nullopt;
    return RecordSpan{day_ends_.front().date, day_ends_.back().date, day_ends_.front().distance,
                      day_ends_.back().distance};
}

std::optional<Distance> OdometerSeries::position(const Date& date) const {
    const auto after = std::ranges::lower_bound(day_ends_, date, {}, &DayEnd::date);
    if (after == day_ends_.end()) return std::nullopt;
    if (after->date == date) return after->distance;
    if (after == day_ends_.begin()) return std::nullopt;
    const auto before = std::prev(after);
    return between(before->distance, after->distance, days_between(before->date, date),
                   days_between(before->date, after->date));
}

std::optional<PeriodDistance> OdometerSeries::period(const Date& from, const Date& to) const {
    const auto record = span();
    if (!record || to < from || to < record->first || from > record->last) return std::nullopt;
    const Date begin = std::max(from, record->first);
    const Date end = std::min(to, record->last);
    const auto at_begin = position(plus_days(begin, -1)).value_or(record->at_first);
    return PeriodDistance{begin, end, *position(end) - at_begin, from > record->first && to <= record->last};
}

std::optional<Distance> OdometerSeries::of_entry(std::string_view entry_id) const {
    const auto found = accepted_by_entry_.find(entry_id);
    if (found == accepted_by_entry_.end()) return std::nullopt;
    return found->second;
}

std::optional<Distance> OdometerSeries::at_entry(const LogEntry& entry) const {
    const auto own = of_entry(entry.id);
    return own ? own : position(entry.value.date);
}

std::optional<Date> OdometerSeries::day_reached(Distance distance) const {
    const auto after = std::ranges::lower_bound(day_ends_, distance, {}, &DayEnd::distance);
    if (after == day_ends_.end()) return std::nullopt;
    if (after == day_ends_.begin())
        return after->distance == distance ? std::optional(after->date) : std::nullopt;
    const auto before = std::prev(after);
    const double share = static_cast<double>((distance - before->distance).micrometres()) /
                         static_cast<double>((after->distance - before->distance).micrometres());
    const int days = days_between(before->date, after->date);
    return plus_days(before->date, static_cast<int>(std::ceil(share * days)));
}

} // namespace sumpbook::usage
