// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/bike.h"
#include "reports/document/document.h"
#include "reports/document/value.h"

#include <string>

namespace sumpbook::compose {

/// What the bike's vehicle identification number says by itself; null without one.
[[nodiscard]] document::Value vin_json(const BikeDetails& bike);
/// "maker code 1ZZ; check digit 4 fits; model year 1974 or 2004, if the maker follows the US rule"; empty
/// without a number.
[[nodiscard]] std::string vin_words(const BikeDetails& bike);
/// The sentence to show where the number cannot be right; empty where nothing is wrong with it.
[[nodiscard]] std::string vin_warning(const BikeDetails& bike);

} // namespace sumpbook::compose
