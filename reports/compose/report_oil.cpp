// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/report_oil.h"

#include "model/oil/quantities.h"
#include "model/oil/words.h"
#include "reports/compose/entry_words.h"
#include "reports/compose/oil_sample.h"
#include "reports/compose/oil_trend.h"
#include "reports/compose/oil_words.h"
#include "reports/compose/report_oil_answers.h"
#include "reports/compose/report_oil_certainty.h"
#include "reports/compose/words.h"

#include <algorithm>
#include <array>

namespace sumpbook::compose {
namespace {

using document::Align;
using document::Cell;
using document::Document;
using document::Severity;
using oil::SampleAssessment;

void add_answers(Document& text, const OilOfBike& bike, int level) {
    const auto& samples = bike.samples;
    const auto& latest = samples.back();
    text.sentence("In short: " + marked(latest.whole.word) + ". " + advice_words(latest),
                  colour(latest.whole.word));
    text.sentence("This and the answers below rest on the latest sample, " + latest.sample + " of " +
                  spelled_text(latest.date) + ", and on those before it; the figures come after them.");
    text.heading("Is the engine wearing?", level).blocks.emplace_back(wear_answer(samples));
    text.heading("Is the oil still fit?", level).blocks.emplace_back(fitness_answer(latest));
    text.heading("What to do next?", level);
    text.sentence(marked(latest.whole.word) + ". " + advice_words(latest), colour(latest.whole.word));
    text.heading("How sure is this?", level);
    for (auto& sentence : certainty_answer(samples))
        text.sentence(std::move(sentence));
    if (auto past = past_answer(samples, bike.record); !past.empty()) {
        text.heading("Was it ever otherwise?", level);
        for (auto& sentence : past)
            text.sentence(std::move(sentence));
    }
    text.heading("What was assumed?", level);
    for (auto& sentence : assumption_answer(latest))
        text.sentence(std::move(sentence));
}

/// The table without what only a laboratory's reader asks for.
document::Table without_columns(document::Table table, std::initializer_list<std::string_view> names) {
    for (std::size_t i = table.columns.size(); i-- > 0;) {
        if (std::ranges::find(names, table.columns[i].heading) == names.end()) continue;
        const auto at = static_cast<std::ptrdiff_t>(i);
        table.columns.erase(table.columns.begin() + at);
        for (auto& row : table.rows)
            row.erase(row.begin() + at);
    }
    return table;
}

void add_latest(Document& text, const SampleAssessment& latest, int level) {
    text.heading("The latest sample against its limits", level);
    text.sentence("Each value stands beside the new oil's, where that is known, and the limit it was held "
                  "against: ● within, ▲ watch, ■ act, ○ unrated (no published limit fits).");
    text.facts(sample_facts(latest));
    text.table(without_columns(sample_values(latest), {"Level", "Since the last sample"}));
}

/// Of one quantity over the engine's fills; null if it was never measured.
const oil::QuantityTrend* trend_of(const OilOfBike& bike, std::string_view quantity) {
    const auto found = std::ranges::find_if(bike.trends, [&](const oil::QuantityTrend& trend) {
        return trend.compartment == "engine" && trend.quantity == quantity;
    });
    return found == bike.trends.end() ? nullptr : &*found;
}

void add_wear(Document& text, const OilOfBike& bike) {
    const auto& latest = bike.samples.back();
    if (!has_earlier_wear(latest)) return;
    auto table = wear_table(latest);
    table.columns.push_back({"From fill to fill", {}});
    for (std::size_t i = 0; i < table.rows.size(); ++i) {
        const auto* trend = trend_of(bike, latest.wear[i].now->element);
        table.rows[i].push_back({trend == nullptr ? "-" : trend_words(*trend), {}});
    }
    text.table(table);
    text.sentence(std::string(wear_columns_explained));
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
    if (bike.samples.size() == 1) {
        text.sentence("One sample tells no story yet; the next one, from the same place and after a similar "
                      "distance, begins it.");
    } else {
        std::vector<const oil::QuantityTrend*> engine;
        for (const auto& trend : bike.trends) {
            if (trend.compartment == "engine") engine.push_back(&trend);
        }
        if (!engine.empty()) text.sentence(movers_words(engine));
        add_wear(text, bike);
        text.table(samples_table(bike.samples));
        text.sentence("Metals grow with the distance run on the oil: compare samples of similar distance, or "
                      "the wear in 1 000 km.");
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
                      ? "Nothing that a verdict needs is missing."
                      : "To call a sample clean these are missing: " + oil::listed(missing) + ".");
    add_unrated(text, latest);
}

/// What the laboratory's words mean, of those that stand in the sample.
void add_words_used(Document& text, const SampleAssessment& latest, int level) {
    constexpr std::array<std::pair<std::string_view, std::string_view>, 8> meanings{{
        {"glycol", "antifreeze: it comes from the coolant"},
        {"B", "an additive of coolant and of some oils"},
        {"tbn", "how much acid the oil can still bind; it falls as the oil ages"},
        {"tan", "how much acid the oil has taken up; it rises as the oil ages"},
        {"oxidation", "how far oxygen has aged the oil, read off an infrared spectrum (abs/cm)"},
        {"nitration", "the same for nitrogen from combustion (abs/cm)"},
        {"kv40", "thickness warm (mm2/s); falls with fuel and shear, rises with ageing and soot"},
        {"kv100", "thickness hot, the one that decides the SAE grade"},
    }};
    document::Facts facts;
    facts.lines.emplace_back("mg/kg", "thousandths of a gram of it in a kilogram of oil");
    facts.lines.emplace_back("fill", "the oil from one oil change to the next");
    if (latest.viscosity.petrol)
        facts.lines.emplace_back("shear",
                                 "gears and chain cut the long molecules that keep multigrade oil thick");
    if (latest.viscosity.index)
        facts.lines.emplace_back("viscosity index", "how little the oil thins as it warms; more is better");
    for (const auto& [quantity, meaning] : meanings) {
        if (oil::value_in(*latest.filled.sample, quantity) != nullptr)
            facts.lines.emplace_back(oil::quantity_name(quantity), meaning);
    }
    text.heading("Words used", level).facts(facts);
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
    add_answers(text, bike, level);
    add_latest(text, latest, level);
    add_story(text, bike, level);
    add_causes(text, latest, level);
    add_missing(text, latest, level);
    add_words_used(text, latest, level);
    text.heading("Where the limits come from, and what to bear in mind", level);
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
