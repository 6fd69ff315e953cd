// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/garage.h"
#include "reports/document/value.h"

#include <string>

namespace sumpbook::compose {

/// Everything an entry says, under stable names (guide: json.md): first what every entry has, then the
/// fields of its kind. Quantities stand as written, {"number": 7671, "unit": "mi"}, and beside them in the
/// one unit of their name (odometer_km). Absent is null.
[[nodiscard]] document::Object entry_json(const std::string& bike, const Entry& entry);

/// The same with the id, the time of recording and the versions it stands for.
[[nodiscard]] document::Object log_entry_json(const std::string& bike, const LogEntry& entry);

} // namespace sumpbook::compose
