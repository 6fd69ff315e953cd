// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/oil_life.h"

#include "model/oil/quantities.h"
#include "reports/compose/oil_json.h"
#include "reports/compose/words.h"

#include <algorithm>
#include <cmath>

namespace sumpbook::compose {
namespace {

using document::Array;
using document::Cell;
using document::Document;
using document::Object;
using document::Severity;
using document::Value;
using oil::IntervalWord;
using oil::LifeMark;
using oil::LifeMarkKind;
using oil::OilLife;

/// A line says little so many times farther than anything that was sampled. DESIGN
constexpr double farthest_told = 3;

/// To a hundred of the dial's unit: more is not known.
std::string about(double km, DistanceUnit unit) {
    const double there = in_unit(Distance::from_km(km), unit, 3).to_double();
    const double hundreds = std::max(1.0, std::round(there / 100)) * 100;
    return grouped(decimal_from_double(hundreds, 0)) + (unit == DistanceUnit::mi ? " mi" : " km");
}

bool too_far(double km, const OilLife& life) { return km > farthest_told * life.longest_run_km; }

std::string distance_cell(const std::optional<double>& km, const OilLife& life) {
    if (!km) return "-";
    return too_far(*km, life) ? "far past what was sampled" : about(*km, life.dial_unit);
}

std::string mark_words(const LifeMark& mark) {
    const std::string name = oil::quantity_name(mark.quantity);
    switch (mark.kind) {
    case LifeMarkKind::half_base_number:
        return "base number down to half of the new oil's";
    case LifeMarkKind::base_meets_acid:
        return "base number down to the acid number";
    case LifeMarkKind::leaves_grade:
        return "thinned out of its SAE grade";
    case LifeMarkKind::viscosity:
        return (mark.falling ? "thinned" : "thickened") + std::string(" too far by the grade rule");
    case LifeMarkKind::set_limit:
        break;
    }
    return name + (mark.falling ? " down to " : " up to ") + "the act level of " + mark.set;
}

std::string level_cell(const LifeMark& mark) {
    if (mark.unknown || mark.kind == LifeMarkKind::base_meets_acid) return "-";
    return grouped(decimal_from_double(mark.level, 2)) + " " + mark.unit;
}

document::Table marks_table(const OilLife& life) {
    using document::Align;
    document::Table table{{{"What ends it", {}},
                           {"Level", Align::right},
                           {"Earliest", Align::right},
                           {"About", Align::right},
                           {"Latest", Align::right},
                           {"Values", Align::right}},
                          {}};
    for (const LifeMark& mark : life.marks) {
        if (mark.unknown) continue;
        const bool reached = mark.passed;
        table.rows.push_back({Cell{mark_words(mark) + (mark.decides ? "" : " (does not decide)"), {}},
                              Cell{level_cell(mark), {}}, Cell{distance_cell(mark.earliest_km, life), {}},
                              Cell{reached          ? "reached"
                                   : mark.middle_km ? distance_cell(mark.middle_km, life)
                                                    : "not in sight",
                                   reached && mark.decides ? Severity::danger : Severity::none},
                              Cell{distance_cell(mark.latest_km, life), {}},
                              Cell{std::to_string(mark.points.size()), {}}});
    }
    return table;
}

/// ", between 2 900 and 6 000 km", ", 2 900 km at the earliest".
std::string range_words(const OilLife& life) {
    const bool low = life.earliest_km && life.middle_km && *life.earliest_km < *life.middle_km;
    if (!low) return "; how sure that is cannot be said from so few values";
    if (!life.latest_km || too_far(*life.latest_km, life))
        return ", " + about(*life.earliest_km, life.dial_unit) + " at the earliest, no latest";
    return ", between " + about(*life.earliest_km, life.dial_unit) + " and " +
           about(*life.latest_km, life.dial_unit);
}

std::string lasts_words(const OilLife& life) {
    if (!life.middle_km || too_far(*life.middle_km, life)) {
        const std::string run = about(life.longest_run_km, life.dial_unit);
        if (life.earliest_km && !too_far(*life.earliest_km, life))
            return "On this evidence its end is not in sight; the earliest it could come is " +
                   about(*life.earliest_km, life.dial_unit) + ".";
        return "On this evidence its end is not in sight: the longest run that was sampled is " + run + ".";
    }
    return "On this evidence it lasts about " + about(*life.middle_km, life.dial_unit) + range_words(life) +
           "; first comes: " + mark_words(*life.first()) + ".";
}

std::string earliest_words(const OilLife& life) {
    return about(life.earliest_km ? *life.earliest_km : *life.middle_km, life.dial_unit);
}

std::string advice_words(const OilLife& life) {
    if (life.passed) return "The fill in use is there already: change the oil and the filter.";
    const std::string interval = life.interval_km ? about(*life.interval_km, life.dial_unit) : std::string{};
    switch (life.interval) {
    case IntervalWord::no_plan:
        return "No distance is planned for the engine oil: go by the handbook, and plan it with plan set "
               "engine-oil.";
    case IntervalWord::no_evidence:
    case IntervalWord::inside:
        return "Keep the planned interval of " + interval +
               ": on this evidence the oil does not end before it.";
    case IntervalWord::doubtful:
        return "The planned interval of " + interval + " may be too long: sample the oil at " +
               earliest_words(life) + ", or change it there.";
    case IntervalWord::too_long:
        break;
    }
    return "The planned interval of " + interval + " is longer than that: change the oil from " +
           earliest_words(life) + " on.";
}

Severity colour_of(const OilLife& life) {
    if (life.passed) return Severity::danger;
    const bool doubt = life.interval == IntervalWord::too_long || life.interval == IntervalWord::doubtful;
    if (doubt) return Severity::caution;
    return life.interval == IntervalWord::inside ? Severity::good : Severity::none;
}

/// The advice with the mark of its severity, which says the same as the colour.
std::string marked_advice(const OilLife& life) {
    switch (colour_of(life)) {
    case Severity::danger:
        return "■ " + advice_words(life);
    case Severity::caution:
        return "▲ " + advice_words(life);
    case Severity::good:
        return "● " + advice_words(life);
    case Severity::none:
        break;
    }
    return advice_words(life);
}

std::string rests_on(const OilLife& life) {
    std::string text = "It rests on " + std::to_string(life.samples) +
                       (life.samples == 1 ? " sample" : " samples") + " of this oil in this engine";
    if (life.longest_run_km > 0)
        text += ", the longest run " + about(life.longest_run_km, life.dial_unit) +
                "; past that the line is only carried on";
    text += ".";
    if (life.in_use && life.run_so_far_km)
        text += " The fill in the engine has run " +
                words(Distance::from_km(*life.run_so_far_km), life.dial_unit) + " at the last reading.";
    if (!life.in_use) text += " It is not the oil in the engine now.";
    return text;
}

/// Each reason once, with what it is about.
void add_unknowns(Document& text, const OilLife& life) {
    std::vector<std::string> seen;
    for (const LifeMark& mark : life.marks) {
        std::vector<std::string> sentences = mark.notes;
        if (mark.unknown) sentences.push_back(*mark.unknown);
        for (const std::string& each : sentences) {
            const std::string sentence = oil::quantity_name(mark.quantity) + ": " + each;
            if (std::find(seen.begin(), seen.end(), sentence) != seen.end()) continue;
            seen.push_back(sentence);
            text.sentence(sentence);
        }
    }
}

void add_reasons(Document& text, const OilLife& life) {
    using document::Align;
    document::Table table{
        {{"Followed", {}}, {"Sample", {}}, {"Run on it", Align::right}, {"Value", Align::right}}, {}};
    std::vector<std::string> shown;
    document::Facts sources;
    for (const LifeMark& mark : life.marks) {
        if (!mark.source.empty()) sources.lines.emplace_back(mark_words(mark), mark.source);
        const std::string what = mark.kind == LifeMarkKind::base_meets_acid
                                     ? "base number less acid number"
                                     : oil::quantity_name(mark.quantity);
        if (std::find(shown.begin(), shown.end(), what) != shown.end()) continue;
        if (!mark.points.empty()) shown.push_back(what);
        for (const auto& point : mark.points)
            table.rows.push_back(
                {Cell{what, {}}, Cell{point.sample, {}},
                 Cell{point.on_oil_km == 0 ? "new oil"
                                           : words(Distance::from_km(point.on_oil_km), life.dial_unit),
                      {}},
                 Cell{grouped(decimal_from_double(point.value, 2)), {}}});
    }
    if (!table.rows.empty()) text.table(std::move(table));
    text.sentence(
        "Earliest and latest are where the bounds round the line reach the level that one more sample "
        "would keep in 80 of 100 cases; from two values of a method with a published reproducibility "
        "they are both values moved by it.");
    if (!sources.lines.empty()) text.heading("Sources", 3).facts(std::move(sources));
}

void add_life(Document& text, const OilLife& life, bool why) {
    text.heading(life.bike + ", how long " + life.oil + " lasts");
    text.sentence(lasts_words(life));
    text.sentence(marked_advice(life), colour_of(life));
    text.sentence(rests_on(life));
    const auto table = marks_table(life);
    if (!table.rows.empty()) text.table(table);
    add_unknowns(text, life);
    if (why) add_reasons(text, life);
    for (const std::string& caution : life.cautions)
        text.sentence(caution, Severity::caution);
}

Value mark_json(const LifeMark& mark) {
    static constexpr const char* ranges[] = {"none", "reproducibility", "bounds"};
    Array points;
    for (const auto& point : mark.points)
        points.push_back(Object()
                             .add("sample", point.sample)
                             .add("distance_on_oil_km", km_json(std::optional<double>(point.on_oil_km)))
                             .add("value", figure_json(point.value))
                             .add("in_use", point.in_use));
    Object item;
    item.add("mark", slug(mark.kind)).add("quantity", mark.quantity).add("unit", mark.unit);
    item.add("method", mark.method.empty() ? Value() : Value(mark.method));
    item.add("level", mark.unknown ? Value() : figure_json(mark.level));
    item.add("direction", mark.falling ? "falling" : "rising").add("decides", mark.decides);
    item.add("set", mark.set.empty() ? Value() : Value(mark.set)).add("source", mark.source);
    item.add("earliest_km", km_json(mark.earliest_km)).add("middle_km", km_json(mark.middle_km));
    item.add("latest_km", km_json(mark.latest_km));
    item.add("range", ranges[static_cast<std::size_t>(mark.range)]).add("passed", mark.passed);
    return item.add("unknown", mark.unknown)
        .add("notes", texts_json(mark.notes))
        .add("points", std::move(points));
}

Value life_json(const OilLife& life) {
    Array marks;
    for (const LifeMark& mark : life.marks)
        marks.push_back(mark_json(mark));
    const LifeMark* first = life.first();
    Object item;
    item.add("bike", life.bike).add("oil", life.oil).add("in_use", life.in_use);
    item.add("run_so_far_km", km_json(life.run_so_far_km)).add("samples", life.samples);
    item.add("longest_run_km", km_json(std::optional<double>(life.longest_run_km)));
    item.add("earliest_km", km_json(life.earliest_km)).add("middle_km", km_json(life.middle_km));
    item.add("latest_km", km_json(life.latest_km));
    item.add("first", first != nullptr ? Value(slug(first->kind)) : Value());
    item.add("passed", life.passed).add("interval_km", km_json(life.interval_km));
    item.add("interval", slug(life.interval)).add("marks", std::move(marks));
    return item.add("cautions", texts_json(life.cautions));
}

} // namespace

Document oil_life_text(const std::vector<OilLife>& lives, bool why) {
    Document text;
    if (lives.empty())
        text.sentence(
            "No sample of used engine oil with the name of its oil is recorded. Write one with: sumpbook "
            "-g FILE -b BIKE add sample --help");
    for (const OilLife& life : lives)
        add_life(text, life, why);
    return text;
}

Value oil_life_json(const std::vector<OilLife>& lives) {
    Array items;
    for (const OilLife& life : lives)
        items.push_back(life_json(life));
    return document::list_of(std::move(items));
}

} // namespace sumpbook::compose
