// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/report_oil.h"

#include "model/oil/quantities.h"
#include "model/oil/words.h"
#include "reports/compose/entry_words.h"
#include "reports/compose/oil_sample.h"
#include "reports/compose/oil_words.h"
#include "reports/compose/report_oil_answers.h"
#include "reports/compose/words.h"

#include <algorithm>

namespace sumpbook::compose {
namespace {

using document::Align;
using document::Cell;
using document::Document;
using document::Severity;
using oil::SampleAssessment;

void add_answers(Document& text, const std::vector<SampleAssessment>& samples, int level) {
    const auto& latest = samples.back();
    text.heading("Is the engine wearing?", level).blocks.emplace_back(wear_answer(samples));
    text.heading("Is the oil still fit?", level).blocks.emplace_back(fitness_answer(latest));
    text.heading("What to do next?", level);
    text.sentence(marked(latest.whole.word) + ". " + advice_words(latest), colour(latest.whole.word));
    text.heading("How sure is this?", level);
    for (auto& sentence : certainty_answer(samples))
        text.sentence(std::move(sentence));
    if (auto past = past_answer(samples); !past.empty()) {
        text.heading("Was it ever otherwise?", level);
        for (auto& sentence : past)
            text.sentence(std::move(sentence));
    }
    text.heading("What was assumed?", level);
    for (auto& sentence : assumption_answer(latest))
        text.sentence(std::move(sentence));
}

void add_latest(Document& text, const SampleAssessment& latest, int level) {
    text.heading("The latest sample against its limits", level);
    text.sentence("Each value stands beside the new oil's, where that is known, and the limit it was held "
                  "against: ● within, ▲ watch, ■ act, ○ not judged.");
    text.facts(sample_facts(latest)).table(sample_values(latest));
    if (has_earlier_wear(latest)) text.table(wear_table(latest));
}

/// Wear metals measured in any sample, in the order of printing.
std::vector<std::string> metals_of(const std::vector<SampleAssessment>& samples) {
    std::vector<std::string> metals;
    for (const auto& quantity : oil::sample_quantities()) {
        if (!oil::is_wear_metal(quantity.slug)) continue;
        const bool measured = std::ranges::any_of(samples, [&](const SampleAssessment& sample) {
            return oil::value_in(*sample.filled.sample, quantity.slug) != nullptr;
        });
        if (measured) metals.push_back(quantity.slug);
    }
    return metals;
}

document::Table samples_table(const std::vector<SampleAssessment>& samples) {
    document::Table table{{{"Drawn", {}}, {"Sample", {}}, {"Run on the oil", Align::right}, {"Verdict", {}}},
                          {}};
    const auto metals = metals_of(samples);
    for (const auto& metal : metals)
        table.columns.push_back({oil::quantity_name(metal), Align::right});
    for (const auto& sample : samples) {
        const auto& run = sample.filled.distance_on_oil;
        std::vector<Cell> row{{iso_text(sample.date), {}},
                              {sample.sample, {}},
                              {run ? words(*run, sample.dial_unit) : "-", {}},
                              {marked(sample.whole.word), colour(sample.whole.word)}};
        for (const auto& metal : metals) {
            const auto* value = oil::value_in(*sample.filled.sample, metal);
            row.push_back({value == nullptr ? "-" : value_words(*value), {}});
        }
        table.rows.push_back(std::move(row));
    }
    return table;
}

void add_story(Document& text, const OilOfBike& bike, int level) {
    text.heading("Over the samples", level);
    text.append(bike.trend);
    if (bike.samples.size() == 1) {
        text.sentence("One sample tells no story yet; the next one, from the same place and after a similar "
                      "distance, begins it.");
    } else {
        text.table(samples_table(bike.samples));
        text.sentence("Metals grow with the distance run on the oil: compare samples of similar distance, or "
                      "the rates in 1 000 km above.");
    }
    add_pictures(text, bike.pictures, "");
}

void add_causes(Document& text, const SampleAssessment& latest, int level) {
    Document causes;
    if (latest.coolant.is_named() && !latest.coolant.may_be_coolant)
        causes.sentence(
            "Sodium or potassium is high; this bike has no coolant, so salt or an additive is the "
            "likely reason.");
    for (const auto& pattern : latest.patterns)
        causes.sentence(pattern_sentence(pattern));
    add_element_sources(causes, latest);
    if (causes.blocks.empty()) return;
    text.heading("Possible causes", level).append(std::move(causes));
    text.sentence("These are possibilities to look into, not findings.");
}

void add_missing(Document& text, const SampleAssessment& latest, int level) {
    text.heading("What is missing", level);
    const auto& missing = latest.whole.missing;
    text.sentence(missing.empty()
                      ? "Everything that a sample needs to be called clean was measured and judged."
                      : "To call a sample clean these are missing: " + oil::listed(missing) + ".");
    add_unrated(text, latest);
}

void add_bike(Document& text, const OilOfBike& whole, int level) {
    OilOfBike bike = whole;
    const auto others = std::erase_if(
        bike.samples, [](const SampleAssessment& sample) { return sample.compartment != "engine"; });
    if (others != 0)
        text.sentence(counted(others, "sample", "samples") +
                      " of other oils than the engine's left out; see: sumpbook oil assess --all");
    if (bike.samples.empty()) {
        text.sentence("No sample of used engine oil is recorded for " + bike.bike +
                      ": nothing can be said about wear in its engine from the oil.");
        return;
    }
    const auto& latest = bike.samples.back();
    add_answers(text, bike.samples, level);
    add_latest(text, latest, level);
    add_story(text, bike, level);
    add_causes(text, latest, level);
    add_missing(text, latest, level);
    text.heading("Caveats of the limits, and notes", level);
    add_notes(text, latest);
    for (const std::string& caution : latest.cautions)
        text.sentence(caution, Severity::caution);
    add_sources(text, latest);
}

} // namespace

Document report_oil(const ReportFront& front, const std::vector<OilOfBike>& bikes) {
    Document text = report_front("Oil report", front);
    for (const auto& bike : bikes) {
        if (bikes.size() > 1) text.heading(bike.bike);
        add_bike(text, bike, bikes.size() > 1 ? 3 : 2);
    }
    add_report_foot(text, front);
    return text;
}

} // namespace sumpbook::compose
