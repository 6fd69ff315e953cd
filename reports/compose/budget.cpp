// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/budget.h"

#include "reports/compose/forecast.h"
#include "reports/compose/words.h"

#include <algorithm>

namespace sumpbook::compose {
namespace {

using cost::BudgetLine;
using document::Align;
using document::Array;
using document::Object;
using document::Severity;
using document::Value;

std::string name_of(const BudgetLine& line) {
    if (line.bike) return *line.bike;
    return line.category.value_or("All bikes");
}

/// Whether the chance to go over says something.
bool known(const BudgetLine& line) { return line.over_already() || !line.nothing_priced; }

Object item_json(const BudgetLine& line) {
    constexpr int chance_digits = 4;
    Object item;
    item.add("bike", line.bike).add("category", line.category);
    item.add("budget_minor", line.budget.minor).add("currency", line.budget.currency.code());
    item.add("spent_minor", line.spent_minor);
    const auto add = [&](std::string_view name, std::int64_t cost::Spread::*amount) {
        item.add(name, line.rest ? Value((*line.rest).*amount) : Value());
    };
    add("rest_mean_minor", &cost::Spread::mean_minor);
    add("rest_p10_minor", &cost::Spread::p10_minor);
    add("rest_p50_minor", &cost::Spread::p50_minor);
    add("rest_p90_minor", &cost::Spread::p90_minor);
    const auto chance = [&](std::optional<double> value) {
        return known(line) && value ? Value(decimal_from_double(*value, chance_digits)) : Value();
    };
    const auto monthly = [&](std::optional<std::int64_t> minor) {
        return line.nothing_priced || !minor ? Value() : Value(*minor);
    };
    item.add("chance_over_budget", chance(line.chance_over));
    item.add("monthly_amount_minor", monthly(line.monthly_amount_minor));
    item.add("chance_over_budget_together", chance(line.chance_over_together));
    item.add("monthly_amount_together_minor", monthly(line.monthly_amount_together_minor));
    return item;
}

/// Over already is danger, more likely than not caution; the words say the same.
Severity severity_of(const BudgetLine& line) {
    if (line.over_already()) return Severity::danger;
    if (line.nothing_priced) return Severity::none;
    return std::max(line.chance_over, line.chance_over_together.value_or(0)) > 0.5 ? Severity::caution
                                                                                   : Severity::good;
}

/// One text, or both where they differ.
std::string both(const std::string& alone, const std::string& together) {
    return together.empty() || together == alone ? alone : alone + " / " + together;
}

std::string chance_cell(const BudgetLine& line) {
    if (line.over_already()) return "over already";
    if (line.nothing_priced) return "cannot be told";
    return both(chance_words(line.chance_over),
                line.chance_over_together ? chance_words(*line.chance_over_together) : "");
}

std::string rest_cell(const BudgetLine& line) {
    if (line.nothing_priced) return "not priced yet";
    return line.rest ? range_words(*line.rest, line.budget.currency) : "nothing foreseen";
}

std::string monthly_cell(const BudgetLine& line) {
    const auto& currency = line.budget.currency;
    if (line.nothing_priced) return "-";
    const auto& together = line.monthly_amount_together_minor;
    return both(whole_words(line.monthly_amount_minor, currency),
                together ? whole_words(*together, currency) : "");
}

bool names_both(const BudgetLine& line) {
    return chance_cell(line).find(" / ") != std::string::npos ||
           monthly_cell(line).find(" / ") != std::string::npos;
}

} // namespace

Value budget_json(const std::vector<BudgetLine>& lines) {
    Array items;
    for (const auto& line : lines)
        items.emplace_back(item_json(line));
    return document::list_of(std::move(items));
}

document::Document budget_text(const std::vector<BudgetLine>& lines, const Date& today) {
    document::Document text;
    const std::string year = std::to_string(static_cast<int>(today.year()));
    if (lines.empty()) {
        text.sentence("No yearly budget is set. Set one: sumpbook costs budget 1200");
        return text;
    }
    text.heading("Budgets of " + year);
    document::Table table{{{"Budget for", {}},
                           {"A year", Align::right},
                           {"Spent so far", Align::right},
                           {"Still to come", Align::right},
                           {"Chance to go over", {}},
                           {"Put aside a month", Align::right}},
                          {}};
    for (const auto& line : lines) {
        const auto& currency = line.budget.currency;
        table.rows.push_back({{name_of(line), {}},
                              {words(line.budget), {}},
                              {words(Money{line.spent_minor, currency}), {}},
                              {rest_cell(line), {}},
                              {chance_cell(line), severity_of(line)},
                              {monthly_cell(line), {}}});
    }
    text.table(std::move(table));
    if (std::ranges::any_of(lines, names_both))
        text.sentence("Two figures: each bike ridden by itself / all ridden much, or all little, at once.");
    text.sentence(
        "Spent from 1 January to today, still to come from today to 31 December " + year +
        ", in 8 of 10 cases in the range. Buying and selling bikes is left out. Why: sumpbook costs "
        "forecast --why");
    return text;
}

} // namespace sumpbook::compose
