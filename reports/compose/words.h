// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/garage.h"
#include "model/quantity/consumption.h"
#include "model/quantity/distance.h"
#include "model/quantity/money.h"
#include "model/quantity/volume.h"

#include <optional>
#include <string>

namespace sumpbook::compose {

// How amounts are written in text: grouped by narrow blanks, the unit beside the number.

/// 48210 -> "48 210"; -1234.50 -> "-1 234.50". Groups are plain blanks.
[[nodiscard]] std::string grouped(const Decimal& number);
/// "48 210 km", rounded to `scale` digits.
[[nodiscard]] std::string words(Distance distance, DistanceUnit unit, int scale = 0);
/// As written: "7 671.5 mi".
[[nodiscard]] std::string words(const WrittenDistance& distance);
[[nodiscard]] std::string words(const WrittenVolume& volume);
[[nodiscard]] std::string words(Volume volume, VolumeUnit unit, int scale = 2);
/// "1 234.50 EUR".
[[nodiscard]] std::string words(const Money& money);
/// "120.00 EUR", "120.00 EUR + 30.00 GBP", empty for nothing.
[[nodiscard]] std::string words(const MoneyByCurrency& money);
/// "4.96 L/100 km".
[[nodiscard]] std::string words(const Consumption& consumption, ConsumptionUnit unit);
/// "-" for an absent value.
template <class T>
[[nodiscard]] std::string words_or_dash(const std::optional<T>& value) {
    return value ? words(*value) : std::string("-");
}

} // namespace sumpbook::compose
