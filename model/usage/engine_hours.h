// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/garage.h"
#include "model/usage/odometer.h"

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace sumpbook::usage {

/// Turns distance into engine hours where a bike has no hour meter. DESIGN (numbers.md 4.6).
inline constexpr int usual_km_an_hour = 50;

/// Engine hours of a bike: from its hour meter, else distance over its average speed (numbers.md 4.6).
/// Meter readings count by the longest non-falling run, as odometer readings do.
class EngineHours {
public:
    [[nodiscard]] static EngineHours of(const Bike& bike, const OdometerSeries& odometer);

    /// True where at least one meter reading is accepted.
    [[nodiscard]] bool metered() const { return !meter_.empty(); }
    /// Hours at a true distance. With a meter: from the reading nearest in distance, onwards at the meter's
    /// own hours per km (fewer than two readings apart in distance: at the average speed).
    [[nodiscard]] double hours_at(Distance distance) const;
    /// The accepted meter reading of an entry; absent where it has none.
    [[nodiscard]] std::optional<double> hours_of_entry(std::string_view entry_id) const;
    /// The distance at which the hours will stand so high; the inverse of hours_at past the record.
    [[nodiscard]] Distance distance_at(double hours) const;
    /// "by the hour meter", "by 50 km/h, an assumption", "by your average of 60 km/h".
    [[nodiscard]] std::string words() const;

private:
    struct MeterReading {
        double hours = 0;
        Distance distance;
    };
    double km_an_hour_ = usual_km_an_hour;
    bool owners_speed_ = false;
    std::vector<MeterReading> meter_; ///< Accepted, with a known distance, in order.
    std::map<std::string, double, std::less<>> by_entry_;
};

} // namespace sumpbook::usage
