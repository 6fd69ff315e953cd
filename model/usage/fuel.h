// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/garage.h"
#include "model/quantity/consumption.h"
#include "model/usage/odometer.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace sumpbook::usage {

/// Why a span gives no consumption.
enum class SpanVoid {
    missed_fill, ///< A fill inside it was not recorded ("missed one before" on one of its fills).
    no_distance, ///< The two full fills are 0 km apart.
    no_volume,   ///< The amount of one of its fills is not known.
};
[[nodiscard]] std::string_view words(SpanVoid reason);

/// From one full fill to the next: the fuel burnt is what was filled after the first, up to and including
/// the second.
struct FuelSpan {
    std::string from_id; ///< The full fill it starts from; its own fuel does not count.
    std::string to_id;
    Date from;
    Date to;
    Distance distance;
    Volume fuel; ///< Of all fills after the first that have a volume.
    std::vector<std::string> fill_ids;
    std::optional<SpanVoid> void_because;
    bool by_trip = false;                   ///< Distance from trip readings: there was no odometer.
    std::optional<Consumption> consumption; ///< Absent where the span is void.
};

/// Fuel used by a bike, full to full (numbers.md 2; method: std-fuel-examples, "fill full, note odometer;
/// add up litres (all fills); refill full; litres x 100 / km", ecomobile.gouv.qc.ca, READ).
struct FuelUse {
    std::vector<FuelSpan> spans; ///< In order; void ones stay in the list.
    Volume sound_fuel;
    Distance sound_distance;
    /// Litres over distance of the sound spans, never the mean of spans. Absent without a sound span.
    std::optional<Consumption> overall;
};

/// "Missed one before" voids the span it ends or stands in; part fills, and full fills without an accepted
/// reading, carry on to the next full one; a span of 0 km is void. Where a full fill has no odometer the
/// trip distances since the last full one stand in, if every fill since has one.
[[nodiscard]] FuelUse fuel_use(const Bike& bike, const OdometerSeries& odometer);

} // namespace sumpbook::usage
