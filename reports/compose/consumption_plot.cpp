// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/consumption_plot.h"

#include "reports/compose/words.h"

#include <algorithm>

namespace sumpbook::compose {
namespace {

using plot::Mark;
using plot::Point;
using plot::Series;
using plot::Stroke;
using plot::Tone;

/// Points that join up; a gap begins a new run.
class Runs {
public:
    void add(const Point& point) {
        if (runs_.empty() || gap_) runs_.emplace_back();
        gap_ = false;
        runs_.back().push_back(point);
    }
    void gap() { gap_ = true; }
    [[nodiscard]] std::vector<std::vector<Point>> take() && { return std::move(runs_); }

private:
    std::vector<std::vector<Point>> runs_;
    bool gap_ = false;
};

plot::Axis days() { return {.kind = plot::AxisKind::date, .title = "Date"}; }

Series fuel_series(const usage::FuelUse& use, ConsumptionUnit unit) {
    Runs runs;
    for (const auto& span : use.spans) {
        if (span.consumption)
            runs.add({.x = plot::day_position(span.to), .y = span.consumption->in(unit)});
        else
            runs.gap();
    }
    return {.label = "Between full fills", .runs = std::move(runs).take()};
}

std::string fuel_description(const usage::FuelUse& use, const GarageSettings& settings) {
    if (!use.overall) return "No stretch between full fills has a figure.";
    const auto with_figure = [](const usage::FuelSpan& span) { return span.consumption.has_value(); };
    const auto sound = std::ranges::count_if(use.spans, with_figure);
    const auto left_out = static_cast<std::ptrdiff_t>(use.spans.size()) - sound;
    std::string text = std::to_string(sound) + (sound == 1 ? " stretch" : " stretches") +
                       " between full fills, " + words(*use.overall, settings.consumption_unit) + " overall";
    if (left_out > 0) text += "; " + std::to_string(left_out) + " left out, where the line breaks";
    return text + ".";
}

std::optional<Point> oil_point(const usage::FillOilUse& use) {
    const double x = plot::day_position(use.fill.from);
    if (use.litres_per_1000km) return Point{.x = x, .y = *use.litres_per_1000km};
    if (use.at_least_litres_per_1000km)
        return Point{.x = x, .y = *use.at_least_litres_per_1000km, .hollow = true};
    return std::nullopt;
}

std::vector<std::vector<Point>> oil_runs(const usage::OilUseResult& use, bool run_in) {
    Runs runs;
    for (const auto& fill : use.fills) {
        const auto point = fill.fill.run_in == run_in ? oil_point(fill) : std::nullopt;
        if (point)
            runs.add(*point);
        else
            runs.gap();
    }
    return std::move(runs).take();
}

std::string figure(double number) { return grouped(decimal_from_double(number, 2)); }

std::string litres(double litres_per_1000km) { return figure(litres_per_1000km) + " L per 1 000 km"; }

void add_range(plot::Plot& picture, const usage::OilUseResult& use) {
    if (!use.high_litres_per_1000km) return;
    const double high = *use.high_litres_per_1000km;
    if (use.against == usage::OilUseAgainst::handbook)
        picture.rules.push_back(
            {.label = "your manual's figure " + figure(high), .at = high, .tone = Tone::caution});
    if (use.against != usage::OilUseAgainst::published) return;
    picture.bands.push_back({.label = "published figures", .from = use.low_litres_per_1000km, .to = high});
    double highest = high; // the band is in sight
    for (const auto& series : picture.series) {
        for (const auto& run : series.runs) {
            for (const auto& point : run)
                highest = std::max(highest, point.y);
        }
    }
    constexpr double headroom = 1.05;
    picture.y.to = highest * headroom;
}

std::string range_words(const usage::OilUseResult& use) {
    if (!use.high_litres_per_1000km) return "";
    const auto high = litres(*use.high_litres_per_1000km);
    if (use.against == usage::OilUseAgainst::handbook) return " Your manual's figure is " + high + ".";
    return " Published figures run from " + litres(*use.low_litres_per_1000km) + " to " + high + ".";
}

std::string oil_description(const usage::OilUseResult& use) {
    const auto known =
        std::ranges::count_if(use.fills, [](const auto& f) { return oil_point(f).has_value(); });
    if (known == 0) return "No fill of oil has a figure.";
    const auto hollow = std::ranges::count_if(use.fills, [](const auto& fill) {
        return !fill.litres_per_1000km && fill.at_least_litres_per_1000km;
    });
    std::string text = std::to_string(known) + (known == 1 ? " fill" : " fills") + " of oil";
    if (hollow > 0) text += ", " + std::to_string(hollow) + " of them known only as \"at least\" and hollow";
    if (use.litres_per_1000km) text += "; " + litres(*use.litres_per_1000km) + " overall";
    return text + "." + range_words(use);
}

} // namespace

plot::Plot fuel_consumption_plot(const std::string& bike, const usage::FuelUse& use,
                                 const GarageSettings& settings) {
    const auto unit = settings.consumption_unit;
    plot::Plot picture;
    picture.title = "Fuel used by " + bike;
    picture.description = fuel_description(use, settings);
    picture.x = days();
    picture.y.title = "Fuel used, " + std::string(symbol(unit));
    if (!use.overall) return picture;
    picture.series.push_back(fuel_series(use, unit));
    picture.rules.push_back(
        {.label = "overall " + figure(use.overall->in(unit)), .at = use.overall->in(unit)});
    return picture;
}

plot::Plot oil_consumption_plot(const std::string& bike, const usage::OilUseResult& use) {
    plot::Plot picture;
    picture.title = "Oil used by " + bike;
    picture.description = oil_description(use);
    picture.x = days();
    picture.y.title = "Oil used, L per 1 000 km";
    picture.y.from = 0;
    picture.hollow_label = "at least so much";
    if (auto runs = oil_runs(use, false); !runs.empty())
        picture.series.push_back({.label = "Each fill", .runs = std::move(runs)});
    if (auto runs = oil_runs(use, true); !runs.empty())
        picture.series.push_back(
            {.label = "Running in", .runs = std::move(runs), .tone = Tone::second, .stroke = Stroke::dotted});
    if (!picture.series.empty()) add_range(picture, use);
    return picture;
}

} // namespace sumpbook::compose
