// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/forecast.h"
#include "reports/compose/words.h"

#include <cmath>

namespace sumpbook::compose {
namespace {

using cost::BikeBasis;
using document::Align;
using document::Document;
using document::Facts;

std::string number(double value, int scale) { return grouped(decimal_from_double(value, scale)); }

std::string percent(double value) {
    std::string text = decimal_from_double(value, 2).text();
    while (text.ends_with('0'))
        text.pop_back();
    if (text.ends_with('.')) text.pop_back();
    return text + " % a year";
}

std::string times(std::size_t count, const std::string& one) {
    return std::to_string(count) + " " + one + (count == 1 ? "" : "s");
}

std::string money_words(double minor, const Currency& currency) {
    return words(Money{std::llrint(minor), currency});
}

DistanceUnit dial_unit(const BikeBasis& basis) { return basis.bike->bike().details.value.odometer_unit; }

std::string distance_fact(const ForecastReport& report, const BikeBasis& basis) {
    const double year = days_between(report.forecast.today, plus_months(report.forecast.today, 12));
    const auto quantile = [&](double p) {
        return words(Distance::from_km(basis.riding->distance_quantile_km(0, year, p)), dial_unit(basis));
    };
    return quantile(0.1) + " to " + quantile(0.9) + ", about " + quantile(0.5);
}

/// As on the dial.
std::string reading_fact(const BikeBasis& basis) {
    if (!basis.riding->known()) return "none";
    const auto& dials = basis.bike->odometer().dials();
    return words(dials.shown_at(Distance::from_km(basis.riding->last_km())), dial_unit(basis)) + " on " +
           spelled_text(basis.riding->last_reading());
}

std::string riding_fact(const BikeBasis& basis) {
    std::string text = basis.bike->outlook().words(dial_unit(basis));
    if (!basis.riding->known()) {
        const auto& guess = basis.bike->bike().details.value.expected_distance_a_year;
        text = guess
                   ? "from your guess of " + words(*guess) + " a year: no reading is recorded"
                   : "from a common " + words(Distance::from_km(usage::default_km_a_year), dial_unit(basis)) +
                         " a year, an assumption: no reading is recorded";
    } else if (const auto steps = basis.riding->riders().steps; steps > 0) {
        text += ", learnt in " + times(steps, "part") + " of the record";
    }
    return text;
}

/// "1.859 EUR a litre, the middle of 1.82 (3 May 2026), ...".
std::string price_fact(const ForecastReport& report, const cost::RunningPrice& price) {
    constexpr int price_digits = 3;
    const double minor_in_unit = std::pow(10.0, report.forecast.currency.minor_digits());
    const auto unit_price = [&](double minor) { return number(minor / minor_in_unit, price_digits); };
    std::string text = unit_price(price.minor_per_litre) + " " + report.forecast.currency.code() +
                       " a litre, the middle of the last " + times(price.bought.size(), "purchase") + ": ";
    for (const auto& bought : price.bought)
        text += (text.ends_with(": ") ? "" : ", ") + unit_price(bought.minor_per_litre) + " on " +
                spelled_text(bought.date);
    return text;
}

void add_running(Facts& facts, const ForecastReport& report, const BikeBasis& basis) {
    constexpr double hundred_km = 100;
    constexpr double thousand_km = 1000;
    if (basis.fuel) {
        facts.lines.emplace_back("Fuel used", words(Consumption{basis.fuel->litres_per_km * hundred_km},
                                                    report.settings.consumption_unit));
        facts.lines.emplace_back("Fuel price", price_fact(report, basis.fuel->price));
        facts.lines.emplace_back("Fuel price rises", percent(basis.fuel->drift_percent_a_year));
    }
    if (basis.oil) {
        facts.lines.emplace_back("Oil topped up",
                                 number(basis.oil->litres_per_km * thousand_km, 2) + " L/1 000 km");
        facts.lines.emplace_back("Oil price", price_fact(report, basis.oil->price));
        facts.lines.emplace_back("Oil price rises", percent(basis.oil->drift_percent_a_year));
    }
}

void add_repairs(Facts& facts, const ForecastReport& report, const BikeBasis& basis) {
    const auto& repairs = basis.repairs;
    constexpr auto assumed = Distance::from_whole_km(10'000);
    const DistanceUnit unit = dial_unit(basis);
    const double km_each = 1 / Distance::from_whole_km(1).in(unit);
    facts.lines.emplace_back("Repairs", "0.5 + " + std::to_string(repairs.events) + " recorded in " +
                                            words(assumed, unit) + " + " +
                                            words(Distance::from_km(repairs.exposure_km), unit) + ": " +
                                            number(repairs.rate.mean(10'000 * km_each), 2) + " in 10 000 " +
                                            std::string(symbol(unit)));
    if (!repairs.cost) return;
    std::string rests_on = times(repairs.bills.size(), "past repair");
    if (repairs.other_bills > 0)
        rests_on += " and, counting as two, " + std::to_string(repairs.other_bills) + " of the other bikes";
    facts.lines.emplace_back(
        "A repair costs", money_words(repairs.cost->quantile_minor(0.1), report.forecast.currency) + " to " +
                              money_words(repairs.cost->quantile_minor(0.9), report.forecast.currency) +
                              ", from " + rests_on);
    facts.lines.emplace_back("Repair prices rise", percent(repairs.drift_percent_a_year));
}

std::string rests_on(const cost::PlannedJob& job) {
    std::string text;
    if (job.estimate) text = "estimate " + words(*job.estimate) + ", counting as two bills";
    if (!job.bills.empty()) text += (text.empty() ? "" : "; ") + times(job.bills.size(), "bill");
    return text.empty() ? "nothing" : text;
}

document::Table jobs_table(const ForecastReport& report, std::size_t bike) {
    document::Table table{{{"Job", {}},
                           {"Times", Align::right},
                           {"Costs today", Align::right},
                           {"Rests on", {}},
                           {"Prices rise", Align::right}},
                          {}};
    for (const auto& outlook : report.forecast.jobs) {
        if (outlook.bike != bike) continue;
        const auto& job = report.run.bikes[bike].jobs[outlook.job];
        std::string cost = "not priced";
        if (job.cost)
            cost = whole_words(std::llrint(job.cost->quantile_minor(0.1)), report.forecast.currency) +
                   " to " + whole_words(std::llrint(job.cost->quantile_minor(0.9)), report.forecast.currency);
        table.rows.push_back({{job.item.label, {}},
                              {number(outlook.mean_times, 1), {}},
                              {cost, {}},
                              {rests_on(job), {}},
                              {percent(job.drift_percent_a_year), {}}});
    }
    return table;
}

document::Table dated_table(const ForecastReport& report, const BikeBasis& basis) {
    document::Table table{{{"On", {}}, {"What", {}}, {"Category", {}}, {"Amount", Align::right}}, {}};
    for (const auto& dated : basis.dated) {
        table.rows.push_back({{iso_text(dated.date), {}},
                              {dated.label + (dated.missed ? " (missed, perhaps paid)" : ""), {}},
                              {dated.category, {}},
                              {words(Money{dated.minor, report.forecast.currency}), {}}});
    }
    return table;
}

void add_bike(Document& text, const ForecastReport& report, std::size_t bike) {
    const BikeBasis& basis = report.run.bikes[bike];
    text.heading(basis.bike->name(), 3);
    Facts facts;
    facts.lines.emplace_back("Last reading", reading_fact(basis));
    facts.lines.emplace_back("Riding", riding_fact(basis));
    facts.lines.emplace_back("Next 12 months", distance_fact(report, basis));
    add_running(facts, report, basis);
    add_repairs(facts, report, basis);
    text.facts(std::move(facts));
    if (auto jobs = jobs_table(report, bike); !jobs.rows.empty()) text.table(std::move(jobs));
    if (auto dated = dated_table(report, basis); !dated.rows.empty()) text.table(std::move(dated));
}

} // namespace

Document forecast_why_text(const ForecastReport& report) {
    Document text = forecast_text(report);
    const auto& wish = report.forecast.wish;
    text.heading("What this rests on");
    text.sentence(
        grouped(Decimal{wish.paths}) + " courses of the time up to " + spelled_text(report.forecast.until) +
        " were drawn, from seed " + std::to_string(wish.seed) +
        "; the ranges leave out the lowest and the highest tenth of them. The monthly amount is a twelfth of "
        "what the next 12 months cost at most in 9 of 10 cases. Prices rise by 3 % a year where you have not "
        "said otherwise "
        "(costs drift). An estimate counts as two bills; without bills a job likely costs 0.7 to 1.4 times "
        "it."
        " Jobs are counted over the whole time up to " +
        spelled_text(report.forecast.until) +
        ". These are choices of ours; change them to see what they do.");
    for (std::size_t bike = 0; bike < report.run.bikes.size(); ++bike)
        add_bike(text, report, bike);
    return text;
}

} // namespace sumpbook::compose
