// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/entry.h"

#include <string>

namespace sumpbook::import {

/// Everything that was read into an entry, on one line, values as written: "2024-05-01 fuel, odometer
/// 12345 km, volume 10.50 L, full, paid 19.51 EUR". For showing before it is written.
[[nodiscard]] std::string entry_text(const Entry& entry);

} // namespace sumpbook::import
