// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/usage/engine_hours.h"

#include "model/usage/longest_run.h"

#include <fmt/format.h>

#include <algorithm>
#include <limits>

namespace sumpbook::usage {
namespace {

/// No number of hours a day is a leap here: the meter runs 24 hours at most and is rarely read.
constexpr std::int64_t no_leap = std::numeric_limits<std::int64_t>::max() / 100'000;
constexpr std::int64_t parts_an_hour = 1'000'000;

std::vector<const LogEntry*> entries_with_hours(const Bike& bike) {
    std::vector<const LogEntry*> found;
    for (const auto& entry : bike.log) {
        if (entry.value.hours) found.push_back(&entry);
    }
    return found;
}

std::vector<const LogEntry*> accepted(const std::vector<const LogEntry*>& entries) {
    std::vector<DatedValue> values;
    for (const auto* entry : entries) {
        const auto parts = scaled_to_integer(*entry->value.hours, parts_an_hour, 1);
        values.push_back(
            {std::chrono::sys_days{entry->value.date}.time_since_epoch().count(), parts.value_or(0)});
    }
    std::vector<const LogEntry*> kept;
    for (const auto i : longest_run(values, no_leap))
        kept.push_back(entries[i]);
    return kept;
}

} // namespace

EngineHours EngineHours::of(const Bike& bike, const OdometerSeries& odometer) {
    EngineHours engine;
    if (const auto& speed = bike.details.value.average_speed_km_h;
        speed && !speed->is_zero() && !speed->is_negative()) {
        engine.km_an_hour_ = speed->to_double();
        engine.owners_speed_ = true;
    }
    for (const auto* entry : accepted(entries_with_hours(bike))) {
        const double hours = entry->value.hours->to_double();
        engine.by_entry_.insert_or_assign(entry->id, hours);
        if (const auto distance = odometer.at_entry(*entry)) engine.meter_.push_back({hours, *distance});
    }
    if (engine.meter_.size() < 2) return engine;
    const auto& first = engine.meter_.front();
    const auto& last = engine.meter_.back();
    if (last.distance > first.distance && last.hours > first.hours)
        engine.km_an_hour_ = (last.distance - first.distance).km() / (last.hours - first.hours);
    return engine;
}

double EngineHours::hours_at(Distance distance) const {
    if (meter_.empty()) return distance.km() / km_an_hour_;
    const auto apart = [&](const MeterReading& reading) {
        return std::max(reading.distance - distance, distance - reading.distance);
    };
    const auto nearest = std::ranges::min_element(meter_, {}, apart);
    return nearest->hours + (distance - nearest->distance).km() / km_an_hour_;
}

std::optional<double> EngineHours::hours_of_entry(std::string_view entry_id) const {
    const auto found = by_entry_.find(entry_id);
    if (found == by_entry_.end()) return std::nullopt;
    return found->second;
}

Distance EngineHours::distance_at(double hours) const {
    if (meter_.empty()) return Distance::from_km(hours * km_an_hour_);
    return meter_.back().distance + Distance::from_km((hours - meter_.back().hours) * km_an_hour_);
}

std::string EngineHours::words() const {
    if (metered()) return "by the hour meter";
    const std::string speed = decimal_from_double(km_an_hour_, owners_speed_ ? 1 : 0).text();
    return owners_speed_ ? fmt::format("by your average of {} km/h", speed)
                         : fmt::format("by {} km/h, an assumption", speed);
}

} // namespace sumpbook::usage
