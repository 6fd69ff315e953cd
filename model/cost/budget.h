// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/cost/forecast.h"

#include <optional>
#include <string>
#include <vector>

namespace sumpbook::cost {

// Yearly budgets stand in the garage's settings by a key: that of all bikes, a category's name, or a bike's.

/// Of all bikes and categories together.
[[nodiscard]] std::string budget_key_of_all();
/// "bike " and the bike's lasting id, so that a new name keeps its budget.
[[nodiscard]] std::string budget_key_of_bike(const SubjectId& id);

/// A yearly budget against what this calendar year has cost and will cost.
struct BudgetLine {
    std::string key;
    std::optional<std::string> bike;     ///< Its name; absent: not a bike's budget.
    std::optional<std::string> category; ///< Absent: not a category's.
    Money budget;
    std::int64_t spent_minor = 0;          ///< From 1 January to today; buying and selling bikes left out.
    std::optional<Spread> rest;            ///< From today to 31 December; absent where nothing is expected.
    double chance_over = 0;                ///< That spent and rest together go strictly above the budget.
    std::int64_t monthly_amount_minor = 0; ///< A twelfth of the 90 % amount of the next 12 months.
    /// The same two should all bikes be ridden much, or little, at once; absent for one bike.
    std::optional<double> chance_over_together;
    std::optional<std::int64_t> monthly_amount_together_minor;
    /// Something is to come, and none of it could be priced: the chance and the monthly amount say nothing.
    bool nothing_priced = false;

    [[nodiscard]] bool over_already() const { return spent_minor > budget.minor; }
};

/// Every budget in the garage's currency, that of all bikes first, then bikes, then categories. `run`: of
/// all bikes.
[[nodiscard]] std::vector<BudgetLine> budget_lines(const ForecastRun& run, const Garage& garage);

} // namespace sumpbook::cost
