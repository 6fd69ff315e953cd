// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/report_costs.h"

#include "reports/compose/budget.h"
#include "reports/compose/words.h"

#include <algorithm>
#include <map>
#include <set>

namespace sumpbook::compose {
namespace {

using cost::Spending;
using document::Align;
using document::Cell;
using document::Document;
using document::Severity;

constexpr std::size_t most_years = 6; // columns that fit on paper

std::string year_of(const Date& date) { return std::to_string(static_cast<int>(date.year())); }

std::vector<Spending> running_of(const std::vector<Spending>& spending) {
    std::vector<Spending> running;
    std::ranges::copy_if(spending, std::back_inserter(running),
                         [](const Spending& line) { return !cost::is_purchase_or_sale(line.category); });
    return running;
}

MoneyByCurrency in_year(const std::vector<Spending>& running, const std::string& year) {
    MoneyByCurrency sum;
    for (const auto& line : running) {
        if (year_of(line.date) == year) sum.add(line.amount);
    }
    return sum;
}

/// Sums by category and column; columns are the latest years and "before YYYY" where there are more.
struct Matrix {
    std::vector<std::string> columns;
    std::map<std::string, std::map<std::string, MoneyByCurrency>> rows;
    std::map<std::string, MoneyByCurrency> together;
};

std::string column_of(const Date& date, const std::vector<std::string>& years) {
    const auto year = year_of(date);
    return year < years.front() ? "Before " + years.front() : year;
}

Matrix matrix_of(const std::vector<Spending>& running) {
    std::set<std::string> all;
    for (const auto& line : running)
        all.insert(year_of(line.date));
    Matrix matrix;
    std::vector<std::string> years(all.begin(), all.end());
    if (years.empty()) return matrix;
    const bool too_many = years.size() > most_years;
    if (too_many) years.erase(years.begin(), years.end() - static_cast<std::ptrdiff_t>(most_years));
    if (too_many) matrix.columns.push_back("Before " + years.front());
    matrix.columns.insert(matrix.columns.end(), years.begin(), years.end());
    for (const auto& line : running) {
        const auto column = column_of(line.date, years);
        matrix.rows[line.category][column].add(line.amount);
        matrix.together[column].add(line.amount);
    }
    return matrix;
}

std::vector<Cell> row_of(const std::string& label, const std::vector<std::string>& columns,
                         const std::map<std::string, MoneyByCurrency>& sums) {
    std::vector<Cell> row{{label, {}}};
    MoneyByCurrency whole;
    for (const auto& column : columns) {
        const auto found = sums.find(column);
        row.push_back({found == sums.end() ? "-" : words(found->second), {}});
        if (found == sums.end()) continue;
        for (const auto& amount : found->second.amounts())
            whole.add(amount);
    }
    row.push_back({words(whole), {}});
    return row;
}

document::Table matrix_table(const std::vector<Spending>& running) {
    const auto matrix = matrix_of(running);
    document::Table table{{{"Category", {}}}, {}};
    for (const auto& column : matrix.columns)
        table.columns.push_back({column, Align::right});
    table.columns.push_back({"Together", Align::right});
    for (const auto& [category, sums] : matrix.rows)
        table.rows.push_back(row_of(category, matrix.columns, sums));
    table.rows.push_back(row_of("Together", matrix.columns, matrix.together));
    return table;
}

std::string or_nothing(const MoneyByCurrency& money) {
    auto text = words(money);
    return text.empty() ? "nothing" : text;
}

std::string short_answer(const std::vector<Spending>& running, const Date& today) {
    const auto year = year_of(today);
    const auto last = std::to_string(static_cast<int>(today.year()) - 1);
    const auto first = std::ranges::min_element(running, {}, &Spending::date)->date;
    return "Running costs since " + spelled_text(first) + ": " + words(cost::total_of(running)) + ". In " +
           year + " so far: " + or_nothing(in_year(running, year)) + "; in " + last + ": " +
           or_nothing(in_year(running, last)) + ". Buying and selling the bikes is not among it.";
}

void add_budgets(Document& text, const CostsOfBikes& costs, const Date& today) {
    if (!costs.budgets.empty()) {
        text.append(budget_text(costs.budgets, today));
        return;
    }
    text.heading("Budget of " + year_of(today)).sentence("No budget is set.");
}

void add_assumptions(Document& text, const CostsOfBikes& costs) {
    text.heading("What this rests on");
    text.sentence(
        "Only what was entered counts, each amount on its own day; an amount in another currency is "
        "converted at the recorded rate of its day, and stands apart where there is none.");
    if (costs.entries_without_money != 0)
        text.sentence(
            "Without an amount of money: " + counted(costs.entries_without_money, "entry", "entries") +
            " of fuel, oil, jobs and parts. Where something was paid for them, the sums are too low.");
    text.sentence(costs.settings.oil_bought_counts == OilBoughtCounts::per_litre_used
                      ? "Oil counts when it is filled in, by the litre, not when the can is bought."
                      : "Oil counts when it is bought.");
    text.sentence("The loss of the bikes' own value is not among the running costs.");
}

bool could_cost(const Entry& entry) {
    return std::holds_alternative<Fuel>(entry.body) || std::holds_alternative<OilChange>(entry.body) ||
           std::holds_alternative<TopUp>(entry.body) || std::holds_alternative<Work>(entry.body) ||
           std::holds_alternative<Fit>(entry.body) || std::holds_alternative<Modification>(entry.body);
}

} // namespace

std::size_t entries_without_money(const Bike& bike) {
    return static_cast<std::size_t>(std::ranges::count_if(bike.log, [](const LogEntry& entry) {
        return could_cost(entry.value) && cost::money_of_entry(entry.value).empty();
    }));
}

Document report_costs(const ReportFront& front, const CostsOfBikes& costs) {
    Document text = report_front("Costs", front);
    const auto running = running_of(costs.spent.spending);
    if (running.empty()) {
        text.append(spent_text(costs.spent));
        add_report_foot(text, front);
        return text;
    }
    text.heading("In short").sentence(short_answer(running, front.as_of));
    text.heading("By year and category").table(matrix_table(running));
    add_pictures(text, costs.spent_pictures, "");
    text.append(spent_text(costs.spent));
    if (!costs.forecast.blocks.empty() || !costs.forecast_pictures.empty()) {
        text.heading("What is to come").append(costs.forecast);
        add_pictures(text, costs.forecast_pictures, "");
    }
    add_budgets(text, costs, front.as_of);
    add_assumptions(text, costs);
    add_report_foot(text, front);
    return text;
}

} // namespace sumpbook::compose
