// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/forecast.h"

#include "reports/compose/words.h"

#include <algorithm>
#include <array>
#include <map>

namespace sumpbook::compose {
namespace {

using document::Align;
using document::Cell;
using document::Document;

const std::vector<cost::ForecastLine>& lines_of(const ForecastReport& report) {
    switch (report.by) {
    case ForecastBy::year:
        return report.forecast.years;
    case ForecastBy::category:
        return report.forecast.categories;
    case ForecastBy::bike:
        return report.forecast.bikes;
    case ForecastBy::month:
        break;
    }
    return report.forecast.months;
}

/// More is to come than the amounts hold.
std::string at_least(const cost::CostForecast& forecast) {
    return forecast.not_priced.empty() ? "" : "at least ";
}

std::string monthly_words(const cost::CostForecast& forecast, std::int64_t minor) {
    return at_least(forecast) + whole_words(minor, forecast.currency) + " a month";
}

std::string answer(const cost::CostForecast& forecast) {
    if (forecast.nothing_priced())
        return "Nothing could be priced yet, so there is no amount to put aside. What is missing stands "
               "below.";
    const auto& year = forecast.next_12_months;
    const auto& currency = forecast.currency;
    const std::string put_aside =
        ". Put aside " + monthly_words(forecast, forecast.monthly_amount_minor()) + ".";
    const std::string middle = whole_words(year.p50_minor, currency);
    if (year.p10_minor == year.p90_minor)
        return "The next 12 months will cost " + at_least(forecast) + middle + put_aside;
    return "The next 12 months will likely cost " + at_least(forecast) + range_words(year, currency) +
           ", about " + middle.substr(0, middle.find_last_of(' ')) + put_aside;
}

void add_together(Document& text, const cost::CostForecast& forecast) {
    const auto& together = forecast.next_12_months_together;
    if (!together || forecast.nothing_priced()) return;
    text.sentence(
        "That takes each bike by itself. Should a year of much riding be one for all of them, and so "
        "a year of little, it is " +
        at_least(forecast) + range_words(*together, forecast.currency) + ", to put aside " +
        monthly_words(forecast, cost::twelfth(together->p90_minor)) + ".");
}

void add_budget(Document& text, const ForecastReport& report) {
    if (!report.budget) return;
    if (report.forecast.nothing_priced()) {
        text.sentence("How likely it is to spend more than " + words(*report.budget) +
                      " cannot be told before something is priced.");
        return;
    }
    const auto chance = cost::chance_over(report.run, report.budget->minor);
    std::string sentence =
        "The chance to spend more than " + words(*report.budget) + " is " + chance_words(chance.chance);
    if (chance.together && chance_words(*chance.together) != chance_words(chance.chance))
        sentence += ", " + chance_words(*chance.together) + " should all bikes be ridden much at once";
    text.sentence(sentence + ".");
}

std::string heading_of(ForecastBy by) {
    constexpr std::array<std::string_view, 4> headings{"Month", "Year", "Category", "Bike"};
    return std::string(headings.at(static_cast<std::size_t>(by)));
}

document::Table table_of(const ForecastReport& report) {
    document::Table table{{{heading_of(report.by), {}},
                           {"Likely from", Align::right},
                           {"About", Align::right},
                           {"Likely to", Align::right},
                           {"On average", Align::right}},
                          {}};
    const auto& currency = report.forecast.currency;
    for (const auto& [key, spread] : lines_of(report)) {
        std::vector<Cell> row{{key, {}}};
        for (const auto minor : {spread.p10_minor, spread.p50_minor, spread.p90_minor, spread.mean_minor})
            row.push_back({whole_words(minor, currency), {}});
        table.rows.push_back(std::move(row));
    }
    return table;
}

/// What stands in the table, and how sure its ends are.
std::string table_words(const ForecastReport& report) {
    const bool of_the_year = report.by == ForecastBy::category || report.by == ForecastBy::bike;
    const std::string time = of_the_year ? "Of the next 12 months. "
                                         : "From today to " + spelled_text(report.forecast.until) + ". ";
    return time + "Each range holds what comes about in 8 of 10 cases; ranges do not add up, averages do.";
}

/// "Old twin: Fork oil, Gearbox oil - no estimate and no past cost.", one sentence a bike and reason.
void add_not_priced(Document& text, const cost::CostForecast& forecast) {
    if (forecast.not_priced.empty()) return;
    text.heading("Not in these amounts", 3);
    std::map<std::pair<std::string, cost::NotPricedBecause>, std::string> by_reason;
    for (const auto& gap : forecast.not_priced) {
        auto& list = by_reason[{gap.bike, gap.because}];
        list += (list.empty() ? "" : ", ") + gap.what + (gap.amount.empty() ? "" : " (" + gap.amount + ")");
    }
    for (const auto& [bike_and_reason, list] : by_reason)
        text.sentence(bike_and_reason.first + ": " + list + " - " +
                      std::string(words(bike_and_reason.second)) + ".");
    const auto without_cost = [](const auto& gap) { return gap.because == cost::NotPricedBecause::no_cost; };
    const auto without_plan = [](const auto& gap) { return gap.because == cost::NotPricedBecause::no_plan; };
    if (std::ranges::any_of(forecast.not_priced, without_cost))
        text.sentence("Estimates of jobs stand in the plan: sumpbook plan set fork-oil --cost 90. A part "
                      "costs what was "
                      "paid when the last one was fitted: sumpbook add fit --help");
    if (std::ranges::any_of(forecast.not_priced, without_plan))
        text.sentence("A plan to start with: sumpbook plan starter");
}

} // namespace

std::string_view slug(ForecastBy by) {
    constexpr std::array<std::string_view, 4> slugs{"month", "year", "category", "bike"};
    return slugs.at(static_cast<std::size_t>(by));
}

std::string whole_words(std::int64_t minor, const Currency& currency) {
    const Decimal exact = amount({minor, currency});
    return grouped(rounded(exact, 0)) + " " + currency.code();
}

std::string range_words(const cost::Spread& spread, const Currency& currency) {
    const std::string low = grouped(rounded(amount({spread.p10_minor, currency}), 0));
    const std::string high = whole_words(spread.p90_minor, currency);
    return low + " " + currency.code() == high ? high : low + " to " + high;
}

std::string chance_words(double chance) {
    constexpr double hundred = 100;
    if (chance <= 0) return "next to nothing";
    if (chance >= 1) return "as good as certain";
    const Decimal in_100 = decimal_from_double(chance * hundred, 0);
    if (in_100 < Decimal{1}) return "less than 1 in 100";
    if (in_100 > Decimal{99}) return "more than 99 in 100";
    return "about " + in_100.text() + " in 100";
}

Document forecast_text(const ForecastReport& report) {
    Document text;
    text.heading("What the next 12 months will cost");
    text.sentence(answer(report.forecast));
    add_together(text, report.forecast);
    add_budget(text, report);
    if (!report.forecast.nothing_priced()) {
        text.table(table_of(report));
        text.sentence(table_words(report));
    }
    add_not_priced(text, report.forecast);
    return text;
}

} // namespace sumpbook::compose
