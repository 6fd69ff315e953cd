// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/cost_plots.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <numeric>
#include <set>

namespace sumpbook::compose {
namespace {

using plot::Tone;

constexpr std::array<Tone, 6> tones{Tone::first,  Tone::second, Tone::third,
                                    Tone::fourth, Tone::fifth,  Tone::sixth};

double whole(double minor, const Currency& currency) {
    return minor / std::pow(10.0, currency.minor_digits());
}

bool is_running_cost(const cost::Spending& line, const Currency& currency) {
    return !cost::is_purchase_or_sale(line.category) && line.amount.currency == currency &&
           line.amount.minor > 0;
}

using ByCategory = std::map<std::string, std::vector<double>>;

/// Per category the minor units of each year from `first` on.
ByCategory by_category(const std::vector<cost::Spending>& spending, const Currency& currency, int first,
                       std::size_t years) {
    ByCategory sums;
    for (const auto& line : spending) {
        if (!is_running_cost(line, currency)) continue;
        auto& values = sums[line.category];
        values.resize(years);
        values[static_cast<std::size_t>(static_cast<int>(line.date.year()) - first)] +=
            static_cast<double>(line.amount.minor);
    }
    return sums;
}

/// The largest categories first; what is over as "other".
std::vector<plot::Bars> bars_of(const ByCategory& sums, const Currency& currency) {
    std::vector<plot::Bars> bars;
    for (const auto& [category, values] : sums)
        bars.push_back({category, values, Tone::muted});
    std::ranges::stable_sort(bars, std::greater{}, [](const plot::Bars& part) {
        return std::accumulate(part.values.begin(), part.values.end(), 0.0);
    });
    while (bars.size() > tones.size()) {
        auto& other = bars[bars.size() - 2];
        for (std::size_t i = 0; i < other.values.size(); ++i)
            other.values[i] += bars.back().values[i];
        other.label = "other";
        bars.pop_back();
    }
    for (std::size_t i = 0; i < bars.size(); ++i) {
        bars[i].tone = tones.at(i);
        for (double& value : bars[i].values)
            value = whole(value, currency);
    }
    return bars;
}

/// A point a day on which money was spent, and one today.
plot::Series spent_so_far(const cost::CostForecast& forecast, const std::vector<cost::Spending>& spending) {
    const Date& today = forecast.today;
    std::map<Date, double> by_day;
    for (const auto& line : spending) {
        const bool this_year = line.date.year() == today.year() && line.date <= today;
        if (this_year && !cost::is_purchase_or_sale(line.category) &&
            line.amount.currency == forecast.currency)
            by_day[line.date] += static_cast<double>(line.amount.minor);
    }
    by_day.try_emplace(Date{today.year(), std::chrono::January, std::chrono::day{1}}, 0);
    by_day.try_emplace(today, 0);
    plot::Series series{"spent", {{}}, Tone::second, plot::Stroke::solid, plot::Mark::none};
    double sum = 0;
    for (const auto& [day, minor] : by_day) {
        sum += minor;
        series.runs.front().push_back({plot::day_position(day), whole(sum, forecast.currency)});
    }
    return series;
}

std::string name_or_count(const std::set<std::string>& bikes) {
    return bikes.size() == 1 ? *bikes.begin() : std::to_string(bikes.size()) + " bikes";
}
std::string whose(const std::vector<cost::Spending>& spending) {
    std::set<std::string> bikes;
    for (const auto& line : spending)
        bikes.insert(line.bike);
    return name_or_count(bikes);
}
std::string whose(const cost::CostForecast& forecast) {
    std::set<std::string> bikes;
    for (const auto& line : forecast.bikes)
        bikes.insert(line.key);
    return name_or_count(bikes);
}

} // namespace

std::optional<plot::Plot> spent_plot(const std::vector<cost::Spending>& spending, const Currency& currency) {
    std::vector<int> years;
    for (const auto& line : spending) {
        if (is_running_cost(line, currency)) years.push_back(static_cast<int>(line.date.year()));
    }
    if (years.empty()) return std::nullopt;
    const auto [first, last] = std::ranges::minmax(years);
    plot::Plot plot;
    plot.title = "Spent each year on " + whose(spending);
    plot.x.kind = plot::AxisKind::category;
    for (int year = first; year <= last; ++year)
        plot.x.categories.push_back(std::to_string(year));
    plot.y.title = "Spent, " + currency.code();
    plot.y.from = 0;
    plot.bars = bars_of(by_category(spending, currency, first, plot.x.categories.size()), currency);
    plot.description = "Bars of the money spent in each year from " + std::to_string(first) + " to " +
                       std::to_string(last) + ", stacked by category: ";
    for (const auto& part : plot.bars)
        plot.description += (plot.description.ends_with(": ") ? "" : ", ") + part.label;
    plot.description += ".";
    return plot;
}

plot::Plot forecast_plot(const cost::CostForecast& forecast, const std::vector<cost::Spending>& spending) {
    const auto costs_something = [](const cost::ForecastLine& line) { return line.spread.p90_minor > 0; };
    plot::Plot plot;
    const std::string year = std::to_string(static_cast<int>(forecast.today.year()));
    plot.title = "Spent in " + year + " and to come, " + whose(forecast);
    plot.x.kind = plot::AxisKind::date;
    plot.x.title = "Date";
    plot.y.title = "Added up since 1 January " + year +
                   (forecast.currency == Currency{} ? "" : ", " + forecast.currency.code());
    plot.series.push_back(spent_so_far(forecast, spending));
    const plot::Point now = plot.series.front().runs.front().back();
    if (now.y == 0 && std::ranges::none_of(forecast.up_to_month, costs_something)) {
        plot.series.clear();
        return plot;
    }
    plot::Ribbon range{"to come: 8 of 10 cases within", {{now.x, now.y, now.y}}, Tone::first};
    plot::Series middle{"to come: even chances above and below",
                        {{now}},
                        Tone::first,
                        plot::Stroke::dashed,
                        plot::Mark::none};
    for (const auto& [day, spread] : forecast.up_to_month) {
        const double x = plot::day_position(parse_iso_date(day).value());
        const auto at = [&](std::int64_t minor) {
            return now.y + whole(static_cast<double>(minor), forecast.currency);
        };
        range.points.push_back({x, at(spread.p10_minor), at(spread.p90_minor)});
        middle.runs.front().push_back({x, at(spread.p50_minor)});
    }
    plot.ribbons.push_back(std::move(range));
    plot.series.push_back(std::move(middle));
    plot.rules.push_back({"today", now.x, true, Tone::muted, plot::Stroke::dotted});
    plot.description = "The sum spent since 1 January " + year + " up to " + spelled_text(forecast.today) +
                       ", and on top of it what is foretold up to " + spelled_text(forecast.until) +
                       ", with the range of 8 in 10 cases.";
    return plot;
}

} // namespace sumpbook::compose
