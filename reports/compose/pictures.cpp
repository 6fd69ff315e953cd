// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/pictures.h"

#include "model/cost/forecast.h"
#include "model/cost/spent.h"
#include "model/oil/assess.h"
#include "model/oil/oil_trend.h"
#include "model/oil/quantities.h"
#include "model/upkeep/due.h"
#include "model/usage/as_of.h"
#include "reports/compose/consumption_plot.h"
#include "reports/compose/cost_plots.h"
#include "reports/compose/due_plot.h"
#include "reports/compose/oil_plots.h"

#include <algorithm>

namespace sumpbook::compose {
namespace {

using Drawn = Result<plot::Plot>;

/// The picture, or what is missing for it.
Drawn unless_empty(plot::Plot plot, const std::string& otherwise) {
    if (plot::empty(plot)) return refuse(otherwise);
    return plot;
}

/// The one bike as it stood on the day.
Bike bike_of(const PictureSubject& subject) { return usage::as_of(*subject.bikes.front(), subject.today); }

/// What a picture can show well: what needs attention and what comes within a year, at most so many.
std::vector<upkeep::DueItem> near_ones(const std::vector<upkeep::DueItem>& items, const Date& today) {
    constexpr std::size_t most = 30; // DESIGN
    constexpr int months = 12;
    std::vector<upkeep::DueItem> near;
    for (const auto& item : items) {
        const bool is_near = item.date_p50 && *item.date_p50 <= plus_months(today, months);
        if (is_near && near.size() < most) near.push_back(item);
    }
    return near.empty() ? items : near;
}

Drawn draw_due(const PictureSubject& subject) {
    const auto items = near_ones(upkeep::due_items(subject.bikes, subject.today), subject.today);
    return unless_empty(due_plot(items, subject.today),
                        "There is nothing to draw of what is due: no planned item has a day yet.");
}

Result<std::vector<oil::QuantityTrend>> trends_of(const PictureSubject& subject, const Bike& bike) {
    const auto profile = oil::profile_for(bike.details.value, std::nullopt);
    if (!profile) return pass_on(profile.error());
    auto trends = oil::oil_trends(oil::OilRecord::of(*subject.garage, bike), *profile);
    std::erase_if(trends, [](const auto& trend) { return trend.compartment != "engine"; });
    return trends;
}

Drawn draw_wear_metals(const PictureSubject& subject) {
    const Bike bike = bike_of(subject);
    const auto trends = trends_of(subject, bike);
    if (!trends) return pass_on(trends.error());
    std::vector<const oil::QuantityTrend*> metals;
    for (const auto& trend : *trends) {
        if (oil::is_wear_metal(trend.quantity)) metals.push_back(&trend);
    }
    return unless_empty(wear_metals_plot(metals), bike.details.value.name +
                                                      " has no sample of used engine oil with wear metals "
                                                      "and an odometer yet.");
}

Drawn draw_viscosity(const PictureSubject& subject) {
    const Bike bike = bike_of(subject);
    const auto trends = trends_of(subject, bike);
    if (!trends) return pass_on(trends.error());
    const auto found = std::ranges::find(*trends, "kv100", &oil::QuantityTrend::quantity);
    const plot::Plot plot = found == trends->end() ? plot::Plot{} : viscosity_plot(*found);
    return unless_empty(plot, bike.details.value.name +
                                  " has no sample of used engine oil with its viscosity at 100 C yet.");
}

Drawn draw_fuel_consumption(const PictureSubject& subject) {
    const Bike bike = bike_of(subject);
    const auto& name = bike.details.value.name;
    const auto use = usage::fuel_use(bike, usage::OdometerSeries::of(bike));
    return unless_empty(fuel_consumption_plot(name, use, settings_of(*subject.garage)),
                        name + " has no two full fills in a row yet: its fuel consumption is not known.");
}

Drawn draw_oil_consumption(const PictureSubject& subject) {
    const Bike bike = bike_of(subject);
    const auto& name = bike.details.value.name;
    return unless_empty(oil_consumption_plot(name, usage::oil_use(bike, usage::OdometerSeries::of(bike))),
                        name + " has no fill of oil from change to change yet: what it uses is not known.");
}

std::vector<cost::Spending> spending_of(const PictureSubject& subject) {
    return cost::spending_until(subject.bikes, settings_of(*subject.garage), subject.today);
}

Drawn draw_costs(const PictureSubject& subject) {
    auto plot = spent_plot(spending_of(subject), settings_of(*subject.garage).currency);
    return unless_empty(plot ? std::move(*plot) : plot::Plot{},
                        "There is nothing to draw of the costs: nothing was spent on running a bike yet.");
}

Drawn draw_forecast(const PictureSubject& subject) {
    const auto run = cost::run_forecast(*subject.garage, subject.bikes, subject.today, {});
    const auto forecast = cost::cost_forecast(run);
    if (!forecast) return refuse("There is no bike to look ahead for: every one was sold.");
    return unless_empty(forecast_plot(*forecast, spending_of(subject)),
                        "There is nothing to draw of the time ahead: no cost is foreseen.");
}

} // namespace

const std::vector<Picture>& pictures() {
    static const std::vector<Picture> all{
        {"due", "when each planned item falls due", false, &draw_due},
        {"wear-metals", "wear metals over the odometer", true, &draw_wear_metals},
        {"viscosity", "viscosity at 100 C in the band of its grade", true, &draw_viscosity},
        {"costs", "spent each year, by category", false, &draw_costs},
        {"forecast", "what the bikes will cost, with its range", false, &draw_forecast},
        {"fuel-consumption", "fuel used from full fill to full fill", true, &draw_fuel_consumption},
        {"oil-consumption", "oil used in each fill", true, &draw_oil_consumption},
    };
    return all;
}

const Picture* find_picture(std::string_view name) {
    const auto found = std::ranges::find(pictures(), name, &Picture::name);
    return found == pictures().end() ? nullptr : &*found;
}

} // namespace sumpbook::compose
