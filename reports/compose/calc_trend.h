// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "reports/compose/calc_results.h"

#include <span>

namespace sumpbook::compose {

/// Whether y rises or falls along x: both lines, the rank test and its interval. What too few points or a
/// single x do not allow is null, and the text says why. Figures have at most 15 decimals: a p under 5e-16 is
/// 0.
[[nodiscard]] CalcAnswer trend_answer(std::span<const double> xs, std::span<const double> ys);

} // namespace sumpbook::compose
