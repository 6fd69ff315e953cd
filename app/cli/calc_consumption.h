// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/quantity/consumption.h"
#include "model/quantity/number_text.h"

#include <string>
#include <vector>

namespace sumpbook::cli {

/// Consumption as typed in words: a volume and a distance in either order ("12.3 L 250 km", "2.7" "imp gal"
/// "150mi") or one figure ("50 mpg US", "5 L/100 km"). Every amount needs its unit; quotes round an amount
/// make no difference.
[[nodiscard]] Result<Consumption> read_consumption(const std::vector<std::string>& words, DecimalMark mark);

} // namespace sumpbook::cli
