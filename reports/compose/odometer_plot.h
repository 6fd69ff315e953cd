// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/garage.h"
#include "reports/plot/plot.h"

namespace sumpbook::compose {

/// True distance over time from every reading; those that do not fit the others stand apart, not joined.
/// Empty for a bike without readings.
[[nodiscard]] plot::Plot odometer_plot(const Bike& bike);

} // namespace sumpbook::compose
