// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/cost/budget.h"
#include "model/garage/settings.h"
#include "reports/compose/report_front.h"
#include "reports/compose/spent.h"

#include <vector>

namespace sumpbook::compose {

struct CostsOfBikes {
    SpentReport spent; ///< By category, from the start of the record until the report's day.
    GarageSettings settings;
    std::size_t entries_without_money =
        0; ///< Fuel, oil, jobs and parts of which nothing was paid, or nothing is said.
    Pictures spent_pictures;
    std::vector<cost::BudgetLine> budgets;
    document::Document forecast; ///< What is to come, in words; empty: no section.
    Pictures forecast_pictures;
};

/// Spent by year and category, for the distance, against the budget; what is to come, and what all of it
/// rests on.
[[nodiscard]] document::Document report_costs(const ReportFront& front, const CostsOfBikes& costs);

/// Of a bike as it stood on the day: see `entries_without_money`.
[[nodiscard]] std::size_t entries_without_money(const Bike& bike);

} // namespace sumpbook::compose
