// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/oil/oil_life.h"
#include "model/oil/rate_value.h"

#include <string_view>
#include <vector>

namespace sumpbook::oil {

/// The levels that end an oil's life in one quantity, as marks without points: the first `act` of every rule
/// that counts, half of the new base number, and for viscosity the grade rule. With a reason in `unknown`
/// where there is no level; empty where no set has a limit. `used`: a value of the used oil, whose method
/// and unit count.
[[nodiscard]] std::vector<LifeMark> life_levels(const SampleValue& used, const RatingBasis& basis);

} // namespace sumpbook::oil
