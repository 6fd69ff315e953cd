// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/consumption.h"

#include "reports/compose/words.h"

#include <algorithm>

namespace sumpbook::compose {
namespace {

using document::Align;
using document::Cell;
using document::Document;
using document::Severity;
using usage::OilUseVerdict;

std::string oil_rate(double litres_per_1000km) {
    return grouped(decimal_from_double(litres_per_1000km, 2)) + " L per 1 000 km";
}

std::size_t sound_spans(const usage::FuelUse& use) {
    return static_cast<std::size_t>(
        std::ranges::count_if(use.spans, [](const auto& span) { return !span.void_because; }));
}

std::string fuel_sentence(const usage::FuelUse& use, const GarageSettings& settings) {
    if (!use.overall) {
        return "Fuel: no figure yet. It takes two full fills with odometer readings and every fill between "
               "them.";
    }
    const auto sound = sound_spans(use);
    std::string text = "Fuel: " + words(*use.overall, settings.consumption_unit) + ", " +
                       words(use.sound_fuel, settings.volume_unit, 1) + " over " +
                       words(use.sound_distance, settings.distance_unit) + ", from " + std::to_string(sound) +
                       (sound == 1 ? " stretch" : " stretches") + " between full fills";
    const auto left_out = use.spans.size() - sound;
    if (left_out > 0) text += "; " + std::to_string(left_out) + " left out";
    return text + ".";
}

std::string against_words(const usage::OilUseResult& use) {
    if (use.against == usage::OilUseAgainst::handbook)
        return "Your manual's figure is " + oil_rate(*use.high_litres_per_1000km) + ". ";
    return "Published figures run from " + oil_rate(*use.low_litres_per_1000km) + " to " +
           oil_rate(*use.high_litres_per_1000km) +
           " and are mostly for cars; your manual's figure comes first. ";
}

std::string verdict_words(OilUseVerdict verdict) {
    switch (verdict) {
    case OilUseVerdict::within:
        return "It is not above it.";
    case OilUseVerdict::above:
        return "It is above it: look for leaks and smoke, read the level more often, and have it looked at.";
    case OilUseVerdict::below_range:
        return "It is below all of them.";
    case OilUseVerdict::in_range:
        return "It lies among them.";
    case OilUseVerdict::above_range:
        return "It is above all of them: look for leaks and smoke, and have it looked at.";
    case OilUseVerdict::unknown:
        break;
    }
    return "";
}

std::string_view short_words(OilUseVerdict verdict) {
    switch (verdict) {
    case OilUseVerdict::within:
        return "within your manual's figure";
    case OilUseVerdict::above:
        return "above your manual's figure";
    case OilUseVerdict::below_range:
        return "below the published figures";
    case OilUseVerdict::in_range:
        return "among the published figures";
    case OilUseVerdict::above_range:
        return "above the published figures";
    case OilUseVerdict::unknown:
        break;
    }
    return "";
}

Severity colour(OilUseVerdict verdict) {
    if (verdict == OilUseVerdict::within || verdict == OilUseVerdict::below_range) return Severity::good;
    return verdict == OilUseVerdict::above || verdict == OilUseVerdict::above_range ? Severity::caution
                                                                                    : Severity::none;
}

std::string bound_words(const usage::OilUseResult& use) {
    const auto bounded = std::find_if(use.fills.rbegin(), use.fills.rend(),
                                      [](const auto& fill) { return fill.at_least_litres_per_1000km; });
    if (bounded == use.fills.rend()) return "";
    return " At least " + oil_rate(*bounded->at_least_litres_per_1000km) + " in the fill of " +
           spelled_text(bounded->fill.from) + ".";
}

/// "1.05 L over 3 500 km in 2 fills": what the figure of the run-in engine rests on.
std::string behind_words(const usage::OilUseResult& use, const GarageSettings& settings) {
    double litres = 0;
    Distance over;
    std::size_t fills = 0;
    for (const auto& one : use.fills) {
        if (!one.litres_per_1000km || one.fill.run_in) continue;
        litres += *one.litres_used;
        over += *one.over;
        ++fills;
    }
    return words(Volume::from_litres(litres), settings.volume_unit) + " over " +
           words(over, settings.distance_unit) + " in " + std::to_string(fills) +
           (fills == 1 ? " fill" : " fills");
}

void add_oil(Document& text, const usage::OilUseResult& use, const GarageSettings& settings) {
    if (!use.litres_per_1000km) {
        text.sentence(
            "Oil: no figure yet. It takes two known levels in one fill: the oil change, and a top-up to "
            "the mark." +
            bound_words(use));
    } else {
        text.sentence("Oil: " + oil_rate(*use.litres_per_1000km) + ", " + behind_words(use, settings) + ". " +
                          against_words(use) + verdict_words(use.verdict),
                      colour(use.verdict));
    }
    if (use.run_in_litres_per_1000km)
        text.sentence("While running in, counted apart: " + oil_rate(*use.run_in_litres_per_1000km) + ".");
}

document::Table span_table(const usage::FuelUse& use, const GarageSettings& settings) {
    document::Table table{{{"From", {}},
                           {"To", {}},
                           {"Distance", Align::right},
                           {"Fuel", Align::right},
                           {"Used", Align::right},
                           {"", {}}},
                          {}};
    for (const auto& span : use.spans) {
        const std::string used = span.consumption ? words(*span.consumption, settings.consumption_unit) : "-";
        std::string remark = span.void_because ? std::string(words(*span.void_because)) : "";
        if (span.by_trip) remark += remark.empty() ? "by trip distance" : ", by trip distance";
        table.rows.push_back({Cell{iso_text(span.from), {}}, Cell{iso_text(span.to), {}},
                              Cell{words(span.distance, settings.distance_unit), {}},
                              Cell{words(span.fuel, settings.volume_unit), {}}, Cell{used, {}},
                              Cell{remark, span.void_because ? Severity::caution : Severity::none}});
    }
    return table;
}

std::string fill_rate(const usage::FillOilUse& use) {
    if (use.litres_per_1000km) return oil_rate(*use.litres_per_1000km);
    if (use.at_least_litres_per_1000km) return "at least " + oil_rate(*use.at_least_litres_per_1000km);
    return "-";
}

/// What a fill's figure rests on, and how it stands.
std::string fill_remark(const usage::FillOilUse& use) {
    if (use.fill.run_in) return "running in, counted apart";
    if (!use.litres_per_1000km && !use.at_least_litres_per_1000km) return "no two known levels";
    const std::string against(short_words(use.verdict));
    const std::string basis = use.litres_per_1000km ? "" : "levels not known";
    return basis + (basis.empty() || against.empty() ? "" : ", ") + against;
}

document::Table fill_table(const usage::OilUseResult& use, const GarageSettings& settings) {
    document::Table table{{{"Oil changed", {}},
                           {"Oil", {}},
                           {"Topped up", Align::right},
                           {"Between levels", Align::right},
                           {"Over", Align::right},
                           {"Used", Align::right},
                           {"", {}}},
                          {}};
    for (const auto& fill : use.fills) {
        const std::string litres =
            fill.litres_used ? grouped(decimal_from_double(*fill.litres_used, 2)) + " L" : "-";
        table.rows.push_back(
            {Cell{fill.fill.oil_change_id ? iso_text(fill.fill.from) : "before the record", {}},
             Cell{fill.fill.oil_name.value_or(""), {}}, Cell{words(fill.topped_up, VolumeUnit::l), {}},
             Cell{litres, {}}, Cell{fill.over ? words(*fill.over, settings.distance_unit) : "-", {}},
             Cell{fill_rate(fill), {}}, Cell{fill_remark(fill), colour(fill.verdict)}});
    }
    return table;
}

std::string other_bikes_words(const std::vector<OilUsedElsewhere>& others) {
    std::string text;
    for (const auto& other : others)
        text += (text.empty() ? "" : ", ") + other.bike + " " + oil_rate(other.litres_per_1000km);
    return text.empty() ? text : "Your other bikes: " + text + ".";
}

void add_sources(Document& text, const usage::OilUseResult& use) {
    if (use.against != usage::OilUseAgainst::published || !use.litres_per_1000km) return;
    document::Table table{{{"Published for", {}}, {"As published", {}}, {"How known", {}}, {"Source", {}}},
                          {}};
    for (const auto& row : usage::published_oil_use()) {
        if (row.run_in) continue;
        table.rows.push_back(
            {Cell{row.scope, {}}, Cell{row.as_published, {}}, Cell{row.evidence, {}}, Cell{row.source, {}}});
    }
    text.table(std::move(table));
}

} // namespace

Document consumption_text(const std::vector<ConsumptionReport>& bikes, const GarageSettings& settings,
                          bool details) {
    Document text;
    for (const auto& bike : bikes) {
        text.heading("Fuel and oil used by " + bike.bike);
        text.sentence(fuel_sentence(bike.fuel, settings));
        if (details && !bike.fuel.spans.empty()) text.table(span_table(bike.fuel, settings));
        add_oil(text, bike.oil, settings);
        if (const auto others = other_bikes_words(bike.other_bikes); !others.empty() && details)
            text.sentence(others);
        if (details && !bike.oil.fills.empty()) text.table(fill_table(bike.oil, settings));
        if (details) add_sources(text, bike.oil);
    }
    return text;
}

} // namespace sumpbook::compose
