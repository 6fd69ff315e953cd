// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/forecast.h"

#include <cmath>

namespace sumpbook::compose {
namespace {

using document::Array;
using document::Object;
using document::Value;

constexpr int chance_digits = 4;
constexpr int minor_digits = 2; // of prices of one litre or kilometre, in minor units

Value figure(double number, int scale) { return decimal_from_double(number, scale); }

Object& add_spread(Object& object, const cost::Spread& spread) {
    return object.add("mean_minor", spread.mean_minor)
        .add("p10_minor", spread.p10_minor)
        .add("p50_minor", spread.p50_minor)
        .add("p90_minor", spread.p90_minor);
}

/// Without a monthly amount and a chance where nothing could be priced.
Object year_json(const cost::Spread& spread, const ForecastReport& report, std::optional<double> chance) {
    const bool priced = !report.forecast.nothing_priced();
    const auto& budget = report.budget;
    Object object;
    add_spread(object, spread)
        .add("monthly_amount_minor", priced ? Value(cost::twelfth(spread.p90_minor)) : Value());
    object.add("budget_minor", budget ? Value(budget->minor) : Value());
    object.add("chance_over_budget", budget && chance && priced ? figure(*chance, chance_digits) : Value());
    return object;
}

Array lines_json(const ForecastReport& report) {
    const auto& forecast = report.forecast;
    const auto& lines = report.by == ForecastBy::month      ? forecast.months
                        : report.by == ForecastBy::year     ? forecast.years
                        : report.by == ForecastBy::category ? forecast.categories
                                                            : forecast.bikes;
    Array items;
    for (const auto& line : lines) {
        Object item;
        item.add(slug(report.by), line.key);
        add_spread(item, line.spread);
        items.emplace_back(std::move(item));
    }
    return items;
}

Value running_json(const std::optional<cost::RunningCost>& running) {
    constexpr double hundred_km = 100;
    if (!running) return {};
    Array bought;
    for (const auto& price : running->price.bought) {
        Object item;
        item.add("date", price.date).add("minor_per_l", figure(price.minor_per_litre, minor_digits));
        bought.emplace_back(std::move(item));
    }
    Object object;
    object.add("l_per_100km", figure(running->litres_per_km * hundred_km, 4))
        .add("minor_per_l", figure(running->price.minor_per_litre, minor_digits))
        .add("bought", std::move(bought))
        .add("price_drift_percent_a_year", figure(running->drift_percent_a_year, minor_digits));
    return object;
}

Value job_cost_json(const std::optional<cost::JobCost>& cost) {
    if (!cost) return {};
    Object object;
    object.add("p10_minor", std::llrint(cost->quantile_minor(0.1)))
        .add("p50_minor", std::llrint(cost->quantile_minor(0.5)))
        .add("p90_minor", std::llrint(cost->quantile_minor(0.9)));
    return object;
}

Object repairs_json(const cost::Repairs& repairs) {
    Object object;
    object.add("events", repairs.events)
        .add("exposure_km", figure(repairs.exposure_km, 0))
        .add("per_10000km", figure(repairs.rate.mean(10'000), 4))
        .add("bills", repairs.bills.size())
        .add("bills_of_other_bikes", repairs.other_bills)
        .add("cost_today", job_cost_json(repairs.cost))
        .add("price_drift_percent_a_year", figure(repairs.drift_percent_a_year, minor_digits));
    return object;
}

Array jobs_json(const ForecastReport& report, std::size_t bike) {
    Array items;
    for (const auto& outlook : report.forecast.jobs) {
        if (outlook.bike != bike) continue;
        const auto& job = report.run.bikes[bike].jobs[outlook.job];
        Object item;
        item.add("item", job.item.slug)
            .add("label", job.item.label)
            .add("category", job.category)
            .add("mean_times", figure(outlook.mean_times, 3))
            .add("estimate_minor", job.estimate ? Value(job.estimate->minor) : Value())
            .add("bills", job.bills.size())
            .add("cost_today", job_cost_json(job.cost))
            .add("price_drift_percent_a_year", figure(job.drift_percent_a_year, minor_digits));
        items.emplace_back(std::move(item));
    }
    return items;
}

Array dated_json(const cost::BikeBasis& basis) {
    Array items;
    for (const auto& dated : basis.dated) {
        Object item;
        item.add("date", dated.date)
            .add("label", dated.label)
            .add("category", dated.category)
            .add("cost_minor", dated.minor)
            .add("comes_again", dated.comes_again)
            .add("missed", dated.missed);
        items.emplace_back(std::move(item));
    }
    return items;
}

Object basis_json(const ForecastReport& report, std::size_t bike) {
    const auto& basis = report.run.bikes[bike];
    const double year = days_between(report.forecast.today, plus_months(report.forecast.today, 12));
    const auto km = [&](double p) { return figure(basis.riding->distance_quantile_km(0, year, p), 1); };
    Object object;
    object.add("bike", basis.bike->name());
    object.add("last_reading_date", basis.riding->known() ? Value(basis.riding->last_reading()) : Value());
    object.add("distance_12_months_p10_km", km(0.1))
        .add("distance_12_months_p50_km", km(0.5))
        .add("distance_12_months_p90_km", km(0.9))
        .add("fuel", running_json(basis.fuel))
        .add("oil", running_json(basis.oil))
        .add("repairs", repairs_json(basis.repairs))
        .add("jobs", jobs_json(report, bike))
        .add("dated", dated_json(basis));
    return object;
}

Array not_priced_json(const cost::CostForecast& forecast) {
    Array items;
    for (const auto& gap : forecast.not_priced) {
        Object item;
        item.add("bike", gap.bike).add("what", gap.what).add("because", cost::slug(gap.because));
        item.add("amount", gap.amount.empty() ? Value() : Value(gap.amount));
        items.emplace_back(std::move(item));
    }
    return items;
}

} // namespace

Value forecast_json(const ForecastReport& report) {
    const auto& forecast = report.forecast;
    cost::ChanceOver chance;
    if (report.budget) chance = cost::chance_over(report.run, report.budget->minor);
    Object object = document::result();
    object.add("currency", forecast.currency == Currency{} ? Value() : Value(forecast.currency.code()));
    object.add("from", forecast.today).add("until", forecast.until);
    object.add("months", forecast.wish.months).add("paths", forecast.wish.paths);
    object.add("seed", forecast.wish.seed);
    object.add("next_12_months", year_json(forecast.next_12_months, report, chance.chance));
    object.add("next_12_months_together",
               forecast.next_12_months_together
                   ? Value(year_json(*forecast.next_12_months_together, report, chance.together))
                   : Value());
    object.add("by", slug(report.by)).add("items", lines_json(report));
    Array basis;
    for (std::size_t bike = 0; bike < report.run.bikes.size(); ++bike)
        basis.emplace_back(basis_json(report, bike));
    object.add("basis", std::move(basis)).add("not_priced", not_priced_json(forecast));
    return object;
}

} // namespace sumpbook::compose
