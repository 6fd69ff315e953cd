// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/cost/budget.h"

#include "model/cost/draws.h"
#include "model/cost/spent.h"

#include <algorithm>

namespace sumpbook::cost {
namespace {

using Kind = ForecastGroup::Kind;

/// What a budget is for.
struct Scope {
    const Bike* bike = nullptr;
    std::optional<std::string> category;
};

Scope scope_of(const std::string& key, const Garage& garage) {
    if (key == budget_key_of_all()) return {};
    for (const auto& bike : garage.bikes) {
        if (budget_key_of_bike(bike.id) == key) return {&bike, {}};
    }
    return {nullptr, key};
}

std::int64_t spent_this_year(const Scope& scope, const Garage& garage, const Date& today) {
    std::int64_t sum = 0;
    for (const auto& bike : garage.bikes) {
        if (scope.bike != nullptr && scope.bike != &bike) continue;
        for (const auto& line : spending_of(bike, garage.settings->value)) {
            const bool this_year = line.date.year() == today.year() && line.date <= today;
            const bool counts = !scope.category || *scope.category == line.category;
            if (this_year && counts && !is_purchase_or_sale(line.category) &&
                line.amount.currency == garage.settings->value.currency)
                sum += line.amount.minor;
        }
    }
    return sum;
}

/// The sums of the group of a kind that is exactly of the scope; absent: nothing is expected there.
const std::vector<std::int64_t>* sums_in(const ForecastRun& run, const Scope& scope, bool rest_of_year) {
    for (std::size_t i = 0; i < run.result.sums.size(); ++i) {
        const auto& group = run.plan.groups[i];
        const bool of_year =
            group.kind == Kind::next_12_months || group.kind == Kind::category || group.kind == Kind::bike;
        if (rest_of_year ? group.kind != Kind::rest_of_year : !of_year) continue;
        const bool bike_fits = group.bike.has_value() == (scope.bike != nullptr) &&
                               (!group.bike || run.bikes[*group.bike].bike->bike().id == scope.bike->id);
        const bool category_fits =
            group.category.has_value() == scope.category.has_value() &&
            (!group.category || run.plan.categories[*group.category] == *scope.category);
        if (bike_fits && category_fits) return &run.result.sums[i];
    }
    return nullptr;
}

BudgetLine line_of(const std::string& key, const Money& budget, const ForecastRun& run,
                   const Garage& garage) {
    const Scope scope = scope_of(key, garage);
    BudgetLine line;
    line.key = key;
    if (scope.bike != nullptr) line.bike = scope.bike->details.value.name;
    line.category = scope.category;
    line.budget = budget;
    line.spent_minor = spent_this_year(scope, garage, run.today);
    line.chance_over = line.spent_minor > budget.minor ? 1 : 0;
    if (const auto* rest = sums_in(run, scope, true)) {
        line.rest = spread_of(*rest);
        line.chance_over = chance_above(*rest, budget.minor - line.spent_minor);
    }
    if (const auto* year = sums_in(run, scope, false))
        line.monthly_amount_minor = twelfth(spread_of(*year).p90_minor);
    return line;
}

} // namespace

std::string budget_key_of_all() { return {}; }

std::string budget_key_of_bike(const SubjectId& id) { return "bike " + hex_text(id); }

std::vector<BudgetLine> budget_lines(const ForecastRun& run, const Garage& garage) {
    std::vector<BudgetLine> lines;
    if (!garage.settings) return lines;
    for (const auto& [key, budget] : garage.settings->value.yearly_budgets) {
        if (budget.currency == run.currency) lines.push_back(line_of(key, budget, run, garage));
    }
    std::ranges::stable_sort(lines, {}, [](const BudgetLine& line) {
        return line.bike ? 1 : line.category ? 2 : 0;
    });
    return lines;
}

} // namespace sumpbook::cost
