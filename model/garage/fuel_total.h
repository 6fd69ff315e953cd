// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/entry.h"

#include <optional>

namespace sumpbook {

/// Price x volume where it contradicts the total typed for a fuel stop: where they differ by more than the
/// rounding of the typed figures explains (the pump's volume and price by half a step of their last digit,
/// the total by one minor unit; common practice, no source). Absent where they agree, where one of the
/// three is absent, or where the currencies differ.
[[nodiscard]] std::optional<Money> contradicting_product(const Fuel& fuel, const std::optional<Money>& total);

} // namespace sumpbook
