// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/oil/oil_trend.h"
#include "reports/plot/plot.h"

#include <vector>

namespace sumpbook::compose {

/// The wear metals of one engine over its odometer, one series a metal (at most six that were ever detected),
/// a run for each fill of oil, each in per cent of the first level of its set, with the bands of the ladder;
/// in mg/kg and without bands where no set in use has a limit for any. Below detection: hollow, at half the
/// detection limit. Empty where no sample has an odometer.
[[nodiscard]] plot::Plot wear_metals_plot(const std::vector<const oil::QuantityTrend*>& trends);

/// One quantity over the odometer, with the limits of its set as bands that bear the set's own words.
[[nodiscard]] plot::Plot quantity_plot(const oil::QuantityTrend& trend);

/// Viscosity at 100 C over the odometer, with the band of the oil's SAE grade and the new oil as a line.
[[nodiscard]] plot::Plot viscosity_plot(const oil::QuantityTrend& kv100);

} // namespace sumpbook::compose
