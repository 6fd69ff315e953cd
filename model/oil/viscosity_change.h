// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/quantity/decimal.h"

#include <compare>

namespace sumpbook::oil {

/// Change of a used oil's viscosity against the new oil's, in per cent; below 0 it has thinned. Refused
/// unless the new oil's viscosity is above 0.
[[nodiscard]] Result<double> viscosity_change_percent(const Decimal& new_mm2_s, const Decimal& used_mm2_s);

/// The same change held against a limit such as -10 or 20 per cent, exactly and unrounded: less where the
/// change is below the limit, equal where it reaches it to the last digit. new_mm2_s above 0.
[[nodiscard]] std::strong_ordering
compare_viscosity_change(const Decimal& new_mm2_s, const Decimal& used_mm2_s, const Decimal& limit_percent);

} // namespace sumpbook::oil
