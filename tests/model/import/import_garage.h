// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/garage.h"

namespace sumpbook::import {

/// A garage in EUR and litres with an old twin in miles and a tourer in kilometres, both without entries.
inline Garage two_bikes() {
    Garage garage;
    Versioned<GarageSettings> settings;
    settings.value.currency = Currency::from_code("EUR").value();
    garage.settings = settings;
    const auto add = [&garage](std::uint8_t number, const char* name, DistanceUnit unit) {
        Bike bike;
        bike.id.bytes[0] = number;
        bike.details.value.name = name;
        bike.details.value.odometer_unit = unit;
        garage.bikes.push_back(std::move(bike));
    };
    add(1, "Tourer", DistanceUnit::km);
    add(2, "Old twin", DistanceUnit::mi);
    return garage;
}

/// The same with one bike only: the tourer.
inline Garage one_bike() {
    Garage garage = two_bikes();
    garage.bikes.pop_back();
    return garage;
}

/// Puts an entry into a bike's log as if it had been recorded.
inline void record(Bike& bike, const Entry& entry, const char* id) {
    LogEntry logged;
    logged.id = id;
    logged.value = entry;
    bike.log.push_back(std::move(logged));
}

inline constexpr Date import_day = std::chrono::year{2026} / 6 / 30;

} // namespace sumpbook::import
