// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/quantity/problem.h"

#include <cstdint>
#include <string>
#include <string_view>

namespace sumpbook {

// The numbers behind the names are written into garage files: never change or reuse one.
enum class DistanceUnit : std::uint8_t { km = 0, mi = 1 };
enum class VolumeUnit : std::uint8_t { l = 0, ml = 1, us_gal = 2, imp_gal = 3, us_qt = 4 };
enum class ConsumptionUnit : std::uint8_t { l_per_100km = 0, km_per_l = 1, mpg_us = 2, mpg_imp = 3 };
enum class TemperatureUnit : std::uint8_t { celsius = 0, fahrenheit = 1 };
enum class TorqueUnit : std::uint8_t { nm = 0, lbf_ft = 1, lbf_in = 2, kgf_m = 3 };

/// The symbol printed beside a number: km, mi, L, mL, US gal, imp gal, US qt, L/100 km, ...
[[nodiscard]] std::string_view symbol(DistanceUnit unit);
[[nodiscard]] std::string_view symbol(VolumeUnit unit);
[[nodiscard]] std::string_view symbol(ConsumptionUnit unit);
[[nodiscard]] std::string_view symbol(TemperatureUnit unit);
[[nodiscard]] std::string_view symbol(TorqueUnit unit);

/// Unit from what people type ("Liter", "litre", "ltr", "gal (US)", "miles"). A bare "gal", "gallon",
/// "mpg" or "pint" is refused with a question, since the US and imperial ones differ by a fifth.
[[nodiscard]] Result<DistanceUnit> read_distance_unit(std::string_view text);
[[nodiscard]] Result<VolumeUnit> read_volume_unit(std::string_view text);
[[nodiscard]] Result<ConsumptionUnit> read_consumption_unit(std::string_view text);
[[nodiscard]] Result<TemperatureUnit> read_temperature_unit(std::string_view text);
[[nodiscard]] Result<TorqueUnit> read_torque_unit(std::string_view text);

} // namespace sumpbook
