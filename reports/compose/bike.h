// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/garage.h"
#include "reports/document/document.h"
#include "reports/document/value.h"

#include <string_view>
#include <vector>

namespace sumpbook::compose {

[[nodiscard]] document::Value bikes_json(const std::vector<const Bike*>& bikes);
[[nodiscard]] document::Document bikes_text(const std::vector<const Bike*>& bikes);

/// Everything said once about a bike, what is odd about its VIN, and how much is recorded.
[[nodiscard]] document::Value bike_json(const Bike& bike);
[[nodiscard]] document::Document bike_text(const Bike& bike);

/// The data card: torques, capacities, pressures, clearances, plug and filter numbers.
[[nodiscard]] document::Value card_json(const Bike& bike);
[[nodiscard]] document::Document card_text(const Bike& bike);
/// Whether a line's name holds what was typed, in any case.
[[nodiscard]] bool names_card_line(const DataCardValue& line, std::string_view typed);

} // namespace sumpbook::compose
