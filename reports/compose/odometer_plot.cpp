// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/odometer_plot.h"

#include "model/usage/odometer.h"
#include "reports/compose/words.h"

namespace sumpbook::compose {
namespace {

/// For drawing only.
double shown(Distance distance, DistanceUnit unit) { return in_unit(distance, unit, 1).to_double(); }

std::string description_of(const usage::OdometerSeries& odometer, std::size_t odd, DistanceUnit unit) {
    std::string text;
    if (const auto span = odometer.span()) {
        text = "From " + words(span->at_first, unit) + " on " + spelled_text(span->first) + " to " +
               words(span->at_last, unit) + " on " + spelled_text(span->last) + ".";
    }
    if (odometer.dials().changed()) text += " The dial was changed; this is the true distance of the bike.";
    if (odd != 0) text += " Readings that do not fit the others: " + std::to_string(odd) + ".";
    return text;
}

} // namespace

plot::Plot odometer_plot(const Bike& bike) {
    const auto odometer = usage::OdometerSeries::of(bike);
    const auto unit = bike.details.value.odometer_unit;
    plot::Plot plot;
    plot.title = "Distance of " + bike.details.value.name;
    plot.x = {.kind = plot::AxisKind::date, .title = "Date", .from = {}, .to = {}, .categories = {}};
    plot.y = {.kind = plot::AxisKind::linear,
              .title = "Distance, " + std::string(symbol(unit)),
              .from = {},
              .to = {},
              .categories = {}};
    std::vector<plot::Point> accepted;
    std::vector<plot::Point> odd;
    for (const auto& reading : odometer.readings()) {
        const plot::Point point{plot::day_position(reading.date), shown(reading.distance, unit), false};
        (reading.accepted ? accepted : odd).push_back(point);
    }
    plot.description = description_of(odometer, odd.size(), unit);
    if (!accepted.empty())
        plot.series.push_back(
            {"Readings", {std::move(accepted)}, plot::Tone::first, plot::Stroke::solid, plot::Mark::none});
    if (!odd.empty())
        plot.series.push_back({"Readings that do not fit",
                               {std::move(odd)},
                               plot::Tone::caution,
                               plot::Stroke::none,
                               plot::Mark::triangle});
    return plot;
}

} // namespace sumpbook::compose
