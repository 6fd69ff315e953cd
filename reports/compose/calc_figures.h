// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/quantity/decimal.h"

#include <optional>

namespace sumpbook::compose {

/// 12.500 -> 12.5, 80.00 -> 80: for computed figures, whose zeros say nothing.
[[nodiscard]] Decimal without_trailing_zeros(Decimal number);
/// The number with `count` figures, or as many as a decimal holds; absent where it is not finite or has
/// more than 17 figures before the point.
[[nodiscard]] std::optional<Decimal> figures(double number, int count);

} // namespace sumpbook::compose
