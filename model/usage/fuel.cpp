// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/usage/fuel.h"

namespace sumpbook::usage {
namespace {

/// The full fill a span starts from, and what has been filled since.
struct OpenSpan {
    const LogEntry* from = nullptr;
    std::optional<Distance> at; ///< Accepted reading of the full fill, or one reached by trip distances.
    FuelSpan span;
    std::optional<Distance> trips = Distance{}; ///< Absent once a fill without a trip distance came.
};

OpenSpan open_at(const LogEntry& fill, std::optional<Distance> at) {
    OpenSpan open;
    open.from = &fill;
    open.at = at;
    open.span.from_id = fill.id;
    open.span.from = fill.value.date;
    return open;
}

void put_in(OpenSpan& open, const LogEntry& fill, const Fuel& fuel) {
    auto& span = open.span;
    span.fill_ids.push_back(fill.id);
    const auto volume = fuel.volume ? volume_of(*fuel.volume) : refuse("no volume");
    if (volume)
        span.fuel += *volume;
    else if (!span.void_because)
        span.void_because = SpanVoid::no_volume;
    if (fuel.missed_before) span.void_because = SpanVoid::missed_fill;
    const auto trip = fuel.trip ? distance_of(*fuel.trip) : refuse("no trip");
    if (open.trips && trip)
        *open.trips += *trip;
    else
        open.trips.reset();
}

/// Distance since the full fill the span starts from; absent where the span has to carry on.
std::optional<Distance> distance_since(OpenSpan& open, const LogEntry& fill, const OdometerSeries& odometer) {
    const auto at = odometer.of_entry(fill.id);
    if (open.at && at) return *at - *open.at;
    if (fill.value.odometer && open.from->value.odometer) return std::nullopt;
    open.span.by_trip = open.trips.has_value();
    return open.trips;
}

void close(OpenSpan& open, const LogEntry& fill, Distance distance, FuelUse& use) {
    auto& span = open.span;
    span.to_id = fill.id;
    span.to = fill.value.date;
    span.distance = distance;
    if (distance <= Distance{} && !span.void_because) span.void_because = SpanVoid::no_distance;
    if (!span.void_because) {
        if (const auto consumption = consumption_of(span.fuel, distance)) span.consumption = *consumption;
        use.sound_fuel += span.fuel;
        use.sound_distance += distance;
    }
    use.spans.push_back(span);
}

} // namespace

std::string_view words(SpanVoid reason) {
    switch (reason) {
    case SpanVoid::missed_fill:
        return "a fill in between was not recorded";
    case SpanVoid::no_distance:
        return "no distance between the two fills";
    case SpanVoid::no_volume:
        return "the amount of one fill is not known";
    }
    return "";
}

FuelUse fuel_use(const Bike& bike, const OdometerSeries& odometer) {
    FuelUse use;
    std::optional<OpenSpan> open;
    for (const auto* fill : entries_of<Fuel>(bike)) {
        const auto& fuel = std::get<Fuel>(fill->value.body);
        if (open) put_in(*open, *fill, fuel);
        if (!fuel.full) continue;
        const auto distance = open ? distance_since(*open, *fill, odometer) : std::nullopt;
        auto at = odometer.of_entry(fill->id);
        if (distance) {
            close(*open, *fill, *distance, use);
            if (!at && open->at) at = *open->at + *distance;
        }
        // A full fill whose place is known is the better start than one whose place is not.
        if (!open || distance || (!open->at && at)) open = open_at(*fill, at);
    }
    if (const auto overall = consumption_of(use.sound_fuel, use.sound_distance)) use.overall = *overall;
    return use;
}

} // namespace sumpbook::usage
