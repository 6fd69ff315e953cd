// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/cost/forecast.h"
#include "model/cost/spent.h"
#include "reports/plot/plot.h"

#include <optional>
#include <vector>

namespace sumpbook::compose {

/// What was spent each year, a bar a year with its categories stacked, the largest first; more than five are
/// joined as "other". Buying and selling bikes, amounts in other currencies and money that came back are
/// left out. Absent without anything to see.
[[nodiscard]] std::optional<plot::Plot> spent_plot(const std::vector<cost::Spending>& spending,
                                                   const Currency& currency);

/// Money of this calendar year and the time ahead, as sums that grow: what was spent from 1 January to
/// today, then what is foretold on top of it, up to each month's end, with the range of 8 in 10 cases. Empty
/// where nothing was spent and nothing is foretold.
[[nodiscard]] plot::Plot forecast_plot(const cost::CostForecast& forecast,
                                       const std::vector<cost::Spending>& spending);

} // namespace sumpbook::compose
