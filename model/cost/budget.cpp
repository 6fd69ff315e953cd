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

/// The group of a kind that is exactly of the scope; absent: nothing is expected there.
std::optional<std::size_t> group_of(const ForecastRun& run, const Scope& scope, bool rest_of_year) {
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
        if (bike_fits && category_fits) return i;
    }
    return std::nullopt;
}

/// Something of a category is to come on a bike of the run, without a price.
bool lacks_prices_of(const std::string& category, const ForecastRun& run, std::size_t number,
                     const GarageSettings& settings) {
    const auto& basis = run.bikes[number];
    if (!basis.fuel && branch_of(settings, "fuel") == category) return true;
    if (!basis.repairs.cost && basis.repairs.category == category) return true;
    for (std::size_t i = 0; i < basis.jobs.size(); ++i) {
        const auto& job = basis.jobs[i];
        if (run.result.jobs_done[number][i] > 0 && job.category == category && !job.cost && !job.is_free())
            return true;
    }
    return false;
}

bool lacks_prices(const Scope& scope, const ForecastRun& run, const GarageSettings& settings) {
    for (std::size_t i = 0; i < run.bikes.size(); ++i) {
        if (scope.bike != nullptr && run.bikes[i].bike->bike().id != scope.bike->id) continue;
        if (scope.category ? lacks_prices_of(*scope.category, run, i, settings) : !not_priced(run, i).empty())
            return true;
    }
    return false;
}

/// Of one kind of paths: every bike by itself, or all together.
struct Chances {
    double over = 0;
    std::int64_t monthly_minor = 0;
};
Chances chances_in(const std::vector<std::vector<std::int64_t>>& sums, const ForecastRun& run,
                   const Scope& scope, const BudgetLine& line) {
    Chances chances{line.over_already() ? 1.0 : 0.0, 0};
    if (const auto rest = group_of(run, scope, true))
        chances.over = chance_above(sums[*rest], line.budget.minor - line.spent_minor);
    if (const auto year = group_of(run, scope, false))
        chances.monthly_minor = twelfth(spread_of(sums[*year]).p90_minor);
    return chances;
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
    if (const auto rest = group_of(run, scope, true)) line.rest = spread_of(run.result.sums[*rest]);
    line.nothing_priced =
        (!line.rest || *line.rest == Spread{}) && lacks_prices(scope, run, garage.settings->value);
    const auto alone = chances_in(run.result.sums, run, scope, line);
    line.chance_over = alone.over;
    line.monthly_amount_minor = alone.monthly_minor;
    if (scope.bike != nullptr || run.result.sums_together.empty()) return line;
    const auto together = chances_in(run.result.sums_together, run, scope, line);
    line.chance_over_together = together.over;
    line.monthly_amount_together_minor = together.monthly_minor;
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
