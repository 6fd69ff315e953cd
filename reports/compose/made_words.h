// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/bike.h"

#include <string>

namespace sumpbook::compose {

/// Maker, model and year of a bike, "Tellurin R750, 2009"; empty where none of them is recorded.
[[nodiscard]] std::string made_words(const BikeDetails& details);

} // namespace sumpbook::compose
