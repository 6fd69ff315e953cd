// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/page_documents.h"

#include "model/cost/forecast.h"
#include "model/oil/oil_trend.h"
#include "model/usage/as_of.h"
#include "reports/compose/consumption.h"
#include "reports/compose/cost_plots.h"
#include "reports/compose/forecast.h"
#include "reports/compose/oil_assessment.h"
#include "reports/compose/oil_trend.h"
#include "reports/compose/oil_words.h"
#include "reports/compose/pictures.h"
#include "reports/compose/spent.h"

#include <algorithm>
#include <thread>

namespace sumpbook::window {
namespace {

using document::Cell;
using document::Document;

void add_picture(Document& text, const compose::Picture& picture, const compose::PictureSubject& subject) {
    auto plot = picture.draw(subject);
    if (!plot) {
        text.sentence(plot.error().sentence);
        return;
    }
    text.figure(std::make_shared<const plot::Plot>(std::move(*plot)));
}

Document spent_by(const Selection& selection, cost::GroupBy by) {
    compose::SpentReport report;
    const auto settings = settings_of(*selection.garage);
    report.by = by;
    report.distance_unit = settings.distance_unit;
    for (const Bike* bike : selection.bikes)
        compose::add_spent(report, *bike, settings, selection.today);
    return compose::spent_text(report);
}

/// The same money by year and by category, and once what is said of it.
void add_spent(Document& text, const Selection& selection) {
    auto by_year = table_and_rest(spent_by(selection, cost::GroupBy::year));
    auto by_category = table_and_rest(spent_by(selection, cost::GroupBy::category));
    if (by_year.table) text.heading("Spent by year").table(std::move(*by_year.table));
    if (by_category.table) text.heading("Spent by category").table(std::move(*by_category.table));
    std::erase_if(by_year.rest.blocks,
                  [](const auto& block) { return std::holds_alternative<document::Heading>(block); });
    text.append(std::move(by_year.rest));
}

/// What is foretold, as a picture, in words and a table; nothing where every bike was sold.
void add_forecast(Document& text, const Selection& selection) {
    cost::ForecastWish wish;
    wish.threads = std::max(1U, std::thread::hardware_concurrency());
    const auto run = cost::run_forecast(*selection.garage, selection.bikes, selection.today, wish);
    const auto forecast = cost::cost_forecast(run);
    if (!forecast) return;
    auto plot = compose::forecast_plot(
        *forecast, cost::spending_until(selection.bikes, settings_of(*selection.garage), selection.today));
    if (!plot::empty(plot)) text.figure(std::make_shared<const plot::Plot>(std::move(plot)));
    text.append(compose::forecast_text(
        {run, *forecast, compose::ForecastBy::month, {}, settings_of(*selection.garage)}));
}

void add_consumption(Document& text, const Selection& selection) {
    std::vector<compose::ConsumptionReport> reports;
    for (const Bike* whole_bike : selection.bikes) {
        const Bike bike = usage::as_of(*whole_bike, selection.today);
        const auto odometer = usage::OdometerSeries::of(bike);
        reports.push_back(
            {bike.details.value.name, usage::fuel_use(bike, odometer), usage::oil_use(bike, odometer)});
    }
    text.append(compose::consumption_text(reports, settings_of(*selection.garage), false));
}

} // namespace

TableAndRest table_and_rest(Document document) {
    TableAndRest parts;
    for (auto& block : document.blocks) {
        auto* table = std::get_if<document::Table>(&block);
        if (table != nullptr && !parts.table)
            parts.table = std::move(*table);
        else
            parts.rest.blocks.push_back(std::move(block));
    }
    return parts;
}

Document pictures_document(const Selection& selection, std::initializer_list<std::string_view> names) {
    Document text;
    for (const auto name : names) {
        const auto* picture = compose::find_picture(name);
        if (picture == nullptr) continue;
        if (!picture->of_one_bike) {
            add_picture(text, *picture, {selection.garage, selection.bikes, selection.today});
            continue;
        }
        for (const Bike* bike : selection.bikes)
            add_picture(text, *picture, {selection.garage, {bike}, selection.today});
    }
    return text;
}

OilSamples oil_samples(const Selection& selection) {
    OilSamples found;
    for (const Bike* whole_bike : selection.bikes) {
        found.as_they_stood.push_back(usage::as_of(*whole_bike, selection.today));
        const Bike& bike = found.as_they_stood.back();
        const auto profile = oil::profile_for(bike.details.value, std::nullopt);
        if (!profile) {
            found.problems.push_back(profile.error());
            continue;
        }
        auto samples = oil::assess_samples(oil::OilRecord::of(*selection.garage, bike), *profile);
        std::ranges::move(samples, std::back_inserter(found.samples));
    }
    std::ranges::stable_sort(found.samples, std::ranges::greater{}, &oil::SampleAssessment::date);
    return found;
}

document::Table samples_table(const std::vector<oil::SampleAssessment>& samples) {
    const bool several =
        std::ranges::any_of(samples, [&](const auto& sample) { return sample.bike != samples.front().bike; });
    document::Table table{{{"Date", {}}}, {}};
    if (several) table.columns.push_back({"Bike", {}});
    table.columns.insert(table.columns.end(), {{"Sample", {}}, {"Verdict", {}}, {"What to do", {}}});
    for (const auto& sample : samples) {
        std::vector<Cell> row{{iso_text(sample.date), {}}};
        if (several) row.push_back({sample.bike, {}});
        row.push_back({sample.sample, {}});
        row.push_back({compose::marked(sample.whole.word), compose::colour(sample.whole.word)});
        row.push_back({compose::advice_words(sample), {}});
        table.rows.push_back(std::move(row));
    }
    return table;
}

Document sample_document(const Selection& selection, const oil::SampleAssessment& sample) {
    Selection its_bike = selection;
    std::erase_if(its_bike.bikes, [&](const Bike* bike) { return bike->details.value.name != sample.bike; });
    Document text = pictures_document(its_bike, {"wear-metals", "viscosity"});
    text.append(compose::oil_assessment_text({sample}, false));
    for (const Bike* bike : its_bike.bikes) {
        const Bike then = usage::as_of(*bike, selection.today);
        const auto profile = oil::profile_for(then.details.value, std::nullopt);
        if (!profile) continue; // said where the samples are listed
        const auto trends = oil::oil_trends(oil::OilRecord::of(*selection.garage, then), *profile);
        if (trends.empty()) continue;
        Document trend = compose::oil_trend_text(trends);
        std::erase_if(trend.blocks, [](const auto& block) { // drawn above
            return std::holds_alternative<document::Figure>(block);
        });
        text.append(std::move(trend));
    }
    return text;
}

Document costs_document(const Selection& selection) {
    Document text = pictures_document(selection, {"costs"});
    add_spent(text, selection);
    add_forecast(text, selection);
    text.append(pictures_document(selection, {"fuel-consumption", "oil-consumption"}));
    add_consumption(text, selection);
    return text;
}

} // namespace sumpbook::window
