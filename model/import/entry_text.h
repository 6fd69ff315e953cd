// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/entry.h"

#include <string>

namespace sumpbook::import {

/// Everything that was read into an entry, on one line, values as written: "2024-05-01 fuel, odometer
/// 12345 km, volume 10.50 L, full, paid 19.51 EUR". Nothing but
/// origin, attachments and doubts is left out. For showing before it is written, and for finding entries that
/// may say the same.
[[nodiscard]] std::string entry_text(const Entry& entry);

} // namespace sumpbook::import
