// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/import/request.h"
#include "model/quantity/units.h"

#include <cstdint>
#include <optional>
#include <set>
#include <string>
#include <vector>

namespace sumpbook::import {

/// A number as the generator means it: whole steps of 10^-scale.
struct TrueNumber {
    std::int64_t steps = 0;
    int scale = 0;
};

/// What one line of a generated file truly says.
struct TrueFill {
    std::size_t line = 0;
    Date date;
    TrueNumber odometer;       ///< As typed, a slip of the hand included.
    TrueNumber right_odometer; ///< As on the dial.
    TrueNumber volume;
    TrueNumber price;
    TrueNumber total;
    bool full = true;
    bool missed = false;
};

/// Litres for 100 km from one full fill to the next, worked out by the generator in plain doubles.
struct TrueSpan {
    std::size_t to_line = 0;
    double litres_per_100km = 0;
};

/// A fuel file in one of many ways of writing, and the truth about it.
struct FuelFile {
    std::string bytes;
    ImportOptions options; ///< What the owner has to add, if anything.
    std::string manner;    ///< The way of writing, for messages.
    DistanceUnit distance_unit = DistanceUnit::km;
    VolumeUnit volume_unit = VolumeUnit::l;
    std::vector<TrueFill> fills; ///< Without duplicates, in the order of days.
    std::vector<TrueSpan> spans; ///< Sound ones only.
    std::set<std::size_t> duplicate_lines;
    std::size_t typo_line = 0;              ///< The line with the slip in its odometer.
    std::set<std::size_t> unreadable_lines; ///< Lines whose octane cannot be read.
    std::size_t rows = 0;
};

/// The same seed gives the same file.
[[nodiscard]] FuelFile generate_fuel_file(std::uint64_t seed);

} // namespace sumpbook::import
