// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/garage.h"
#include "model/usage/engine_hours.h"
#include "model/usage/odometer.h"
#include "model/usage/oil_fills.h"

#include <functional>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace sumpbook::oil {

/// What a bike's record says about distance, hours and fills of oil; read once for all its samples.
struct OilRecord {
    const Garage* garage = nullptr;
    const Bike* bike = nullptr;
    usage::OdometerSeries odometer;
    usage::EngineHours hours;
    /// The fills of each compartment that a sample or an oil change names, in order.
    std::map<std::string, std::vector<usage::OilFill>, std::less<>> fills;
    [[nodiscard]] static OilRecord of(const Garage& garage, const Bike& bike);
    /// Of a compartment; empty for one that nothing names.
    [[nodiscard]] const std::vector<usage::OilFill>& fills_of(std::string_view compartment) const;
};

/// A sample of used oil with the fill of oil it was drawn from.
struct FilledSample {
    const LogEntry* entry = nullptr;
    const Sample* sample = nullptr;
    const LogEntry* oil_change_entry = nullptr; ///< Null: the oil was put in before the record began.
    const OilChange* oil_change = nullptr;
    std::optional<usage::OilFill> fill;
    std::optional<Distance> position;        ///< True distance of the bike when it was drawn.
    std::optional<Distance> distance_on_oil; ///< As typed, else from the odometer; absent: not known.
    std::optional<Decimal> hours_on_oil;     ///< As typed, else from the hour meter.
};

/// A sample belongs to the oil change of its compartment that it names by date, else to the latest one
/// before its own day: a sample of the day of a change is of the oil that was drained.
[[nodiscard]] FilledSample fill_of(const OilRecord& record, const LogEntry& sample);

/// The samples of used oil of one compartment, by date.
[[nodiscard]] std::vector<const LogEntry*> used_samples(const Bike& bike, std::string_view compartment);

} // namespace sumpbook::oil
