// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/settings.h"

#include <optional>

namespace sumpbook::cost {

/// The amount in another currency by the owner's latest rate dated on or before `date`, either way round,
/// rounded half to even in minor units. The same currency comes back unchanged. Absent: no such rate; then
/// the amount stands apart and is never added to others. Absent too where the result would pass `most_minor`.
[[nodiscard]] std::optional<Money> converted(const Money& amount, const Currency& to, const Date& date,
                                             const GarageSettings& settings);

} // namespace sumpbook::cost
