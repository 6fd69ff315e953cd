// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/quantity/dates.h"
#include "model/quantity/distance.h"
#include "model/quantity/money.h"
#include "model/quantity/volume.h"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace sumpbook {

// The numbers of all enumerators in this folder are written into garage files: never change or reuse one.

enum class Cooling : std::uint8_t { air = 0, oil = 1, liquid = 2 };
enum class FuelType : std::uint8_t {
    petrol = 0,
    leaded_petrol = 1,
    petrol_with_lead_substitute = 2,
    diesel = 3
};
enum class BlockMaterial : std::uint8_t { aluminium = 0, iron = 1 };
enum class Bore : std::uint8_t { chrome_plated = 0, other = 1 };
enum class GearboxOil : std::uint8_t { shared = 0, separate = 1 };

/// What a compartment holds: "engine" with and without the filter, "gearbox", "primary", "final-drive",
/// "fork-leg", "coolant", "front-brake", "rear-brake", "clutch".
struct Compartment {
    std::string slug;
    WrittenVolume holds;
    std::optional<WrittenVolume> holds_with_filter; ///< Engine only: with a new filter.
    bool operator==(const Compartment&) const = default;
};

/// A change of owner, seen from this garage.
struct Transfer {
    Date date;
    std::optional<WrittenDistance> odometer;
    std::optional<Money> price; // money
    bool operator==(const Transfer&) const = default;
};

/// Everything said once about a bike. Optional fields: absent = not stated, and every rule that needs
/// one says so instead of assuming.
struct BikeDetails {
    std::string name; ///< Unique in the garage; how commands name the bike.
    std::optional<std::string> maker;
    std::optional<std::string> model;
    std::optional<int> year;
    std::optional<std::string> vin;
    std::optional<std::string> plate; // private
    std::optional<int> displacement_cm3;
    std::optional<Cooling> cooling;
    std::optional<FuelType> fuel;
    std::optional<BlockMaterial> block;
    std::optional<Bore> bore;
    std::optional<GearboxOil> gearbox_oil;
    std::optional<bool> wet_clutch;
    std::vector<Compartment> compartments;
    std::optional<WrittenVolume> between_level_marks; ///< Litres from the lower to the upper mark.
    DistanceUnit odometer_unit = DistanceUnit::km;    ///< As on the dial.
    std::optional<bool> hour_meter;
    std::optional<Decimal> average_speed_km_h; ///< Turns distance into hours; absent: 50 (numbers.md 4.6).
    std::optional<Date> in_service_date;
    std::optional<WrittenDistance> in_service_odometer;
    std::optional<WrittenDistance> expected_distance_a_year;
    std::optional<Transfer> bought;
    std::optional<Transfer> sold;
    std::optional<bool> for_us_or_canada;   ///< Makes the VIN check digit binding.
    std::optional<std::string> oil_profile; ///< Name of the oil profile the owner chose.
    std::optional<Decimal> oil_carry_over;  ///< Fraction of the old oil left in, 0..1; absent: 0.1.
    /// The owner's manual figure for oil used, L per 1 000 km.
    std::optional<Decimal> handbook_oil_use_l_per_1000km;
    std::optional<std::string> note; // private
    bool operator==(const BikeDetails&) const = default;
};

/// One line of the data card: a torque, capacity, pressure, clearance, plug or filter number.
struct DataCardValue {
    std::string name;  ///< "rear axle nut", unique for a bike.
    std::string value; ///< As written: "98", "0.10-0.15", a part number.
    std::optional<std::string> unit;
    std::optional<std::string> source; ///< "owner's handbook p. 112"; absent: not stated.
    bool operator==(const DataCardValue&) const = default;
};

} // namespace sumpbook
