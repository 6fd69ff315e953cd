// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/oil_sample.h"

#include "model/garage/slugs.h"
#include "model/oil/element_sources.h"
#include "model/oil/quantities.h"
#include "model/oil/words.h"
#include "reports/compose/entry_words.h"
#include "reports/compose/oil_words.h"
#include "reports/compose/words.h"

#include <algorithm>

namespace sumpbook::compose {
namespace {

using document::Cell;
using document::Document;
using oil::Ladder;
using oil::PatternKind;
using oil::RatedValue;
using oil::SampleAssessment;

std::string oil_line(const SampleAssessment& assessment) {
    const auto* change = assessment.filled.oil_change;
    if (change == nullptr) return "not recorded when it was filled in";
    std::string text = change->oil_name.value_or("name not recorded");
    const bool named = change->sae_grade && text.find(*change->sae_grade) != std::string::npos;
    if (change->sae_grade && !named) text += ", " + *change->sae_grade;
    return text + ", in since " + spelled_text(assessment.filled.oil_change_entry->value.date);
}

std::string run_line(const SampleAssessment& assessment) {
    std::string text = assessment.filled.distance_on_oil
                           ? words(*assessment.filled.distance_on_oil, assessment.dial_unit)
                           : std::string{};
    if (assessment.filled.hours_on_oil)
        text += (text.empty() ? "" : ", ") + assessment.filled.hours_on_oil->text() + " h";
    return text.empty() ? "not known" : text;
}

bool any_rate(const SampleAssessment& assessment) {
    return std::any_of(assessment.values.begin(), assessment.values.end(),
                       [](const RatedValue& value) { return value.rate.has_value(); });
}

/// "in grade, 12.5 to 16.3 mm2/s, -20 to +20 %": what the GRADE rule holds a viscosity to.
std::string grade_limit(const oil::ViscosityFindings& findings) {
    const std::string change = "above -20 %, below +20 % of new";
    const auto band = findings.grade ? oil::band_of(*findings.grade) : std::nullopt;
    if (!band || findings.judged_at != oil::ViscosityAt::celsius_100) return change;
    return grouped(band->from_mm2_s) +
           (band->below_mm2_s ? " to " + grouped(*band->below_mm2_s) : " or more") + " mm2/s; " + change;
}

std::string limit_cell(const RatedValue& value, const SampleAssessment& assessment) {
    if (value.set == oil::grade_set) return value.unrated ? "-" : grade_limit(assessment.viscosity);
    return value.limit ? limit_words(*value.limit) : "-";
}

} // namespace

document::Facts sample_facts(const SampleAssessment& assessment) {
    document::Facts facts;
    facts.lines.emplace_back("Sample",
                             assessment.bike + ", " + assessment.sample + ", " + iso_text(assessment.date));
    facts.lines.emplace_back("Verdict", marked(assessment.whole.word));
    facts.lines.emplace_back("Next step", std::string(oil::slug(assessment.advice.kind)));
    facts.lines.emplace_back("Oil", oil_line(assessment));
    facts.lines.emplace_back("Run on this oil", run_line(assessment));
    if (assessment.laboratory) {
        std::string text(slug(*assessment.laboratory));
        if (assessment.laboratory_words) text += " (\"" + *assessment.laboratory_words + "\")";
        facts.lines.emplace_back("The laboratory says", text);
    }
    return facts;
}

document::Table sample_values(const SampleAssessment& assessment) {
    document::Table table{{{"Found", {}},
                           {"Value", {}},
                           {"New oil", {}},
                           {"Verdict", {}},
                           {"Level", {}},
                           {"Limit", {}},
                           {"Set", {}}},
                          {}};
    const bool rates = any_rate(assessment);
    if (rates) table.columns.push_back({"Since the last sample", {}});
    for (const RatedValue& value : assessment.values) {
        table.rows.push_back(
            {Cell{oil::quantity_name(value.written.quantity), {}}, Cell{value_words(value.written), {}},
             Cell{value.fresh ? value_words(*value.fresh) : "-", {}},
             Cell{marked(value.ladder), colour(value.ladder)}, Cell{value.level.value_or("-"), {}},
             Cell{limit_cell(value, assessment), {}}, Cell{value.set.empty() || value.unrated ? "-" : value.set, {}}});
        if (rates) table.rows.back().push_back({value.rate ? rate_words(*value.rate) : "-", {}});
    }
    return table;
}

void add_unrated(Document& text, const SampleAssessment& assessment) {
    std::vector<std::pair<oil::Unrated, std::vector<std::string>>> groups;
    for (const RatedValue& value : assessment.values) {
        if (!value.unrated) continue;
        const auto same = std::find_if(groups.begin(), groups.end(),
                                       [&](const auto& group) { return group.first == *value.unrated; });
        auto& group =
            same == groups.end() ? groups.emplace_back(*value.unrated, std::vector<std::string>{}) : *same;
        group.second.push_back(oil::quantity_name(value.written.quantity));
    }
    for (const auto& [reason, names] : groups)
        text.sentence("Not judged: " + oil::listed(names) + ". " +
                      std::string(oil::sentence(reason, names.size())));
}

std::string pattern_sentence(const oil::PatternFound& pattern) {
    std::vector<std::string> names;
    for (const std::string& quantity : pattern.by)
        names.push_back(oil::quantity_name(quantity));
    std::string text;
    if (pattern.kind == PatternKind::cause) text = "Possible cause: ";
    if (pattern.kind == PatternKind::run_in) text = "May be running in: ";
    if (pattern.kind == PatternKind::remark) text = "Remark: ";
    text += pattern.cause;
    if (!names.empty()) text += " (seen in " + oil::listed(names) + ")";
    return text + ". Source: " + pattern.source + ".";
}

bool has_earlier_wear(const SampleAssessment& assessment) {
    return std::any_of(assessment.wear.begin(), assessment.wear.end(),
                       [](const oil::WearHistory& wear) { return !wear.earlier.empty(); });
}

document::Table wear_table(const SampleAssessment& assessment) {
    document::Table table{
        {{"Wear in 1 000 km", {}}, {"As measured", {}}, {"Corrected", {}}, {"Usual in earlier fills", {}}},
        {}};
    const auto figure = [](double number) { return grouped(decimal_from_double(number, 1)) + " mg/kg"; };
    for (const oil::WearHistory& wear : assessment.wear) {
        const auto usual = oil::median_wear_per_1000km(wear);
        table.rows.push_back({Cell{oil::quantity_name(wear.now->element), {}},
                              Cell{figure(wear.now->measured_per_1000km()), {}},
                              Cell{figure(wear.now->per_1000km()), {}},
                              Cell{usual ? figure(*usual) : "-", {}}});
    }
    return table;
}

void add_element_sources(Document& text, const SampleAssessment& assessment) {
    for (const RatedValue& value : assessment.values) {
        if (value.ladder < Ladder::watch) continue;
        const auto sources = oil::element_sources(value.written.quantity);
        if (sources.empty()) continue;
        const auto& first = sources.front();
        std::string sentence = "Where " + oil::quantity_name(value.written.quantity) +
                               " can come from: " + first.in_engine + ".";
        if (!first.on_motorcycles.empty()) sentence += " On a motorcycle: " + first.on_motorcycles + ".";
        text.sentence(sentence + " Source: " + first.source + ".");
    }
}

void add_wear_notes(Document& text, const SampleAssessment& assessment) {
    std::vector<std::string> said;
    for (const oil::WearHistory& wear : assessment.wear) {
        for (const std::string& note : wear.now->notes) {
            if (std::find(said.begin(), said.end(), note) != said.end()) continue;
            said.push_back(note);
            text.sentence(note);
        }
    }
}

void add_notes(Document& text, const SampleAssessment& assessment) {
    for (const RatedValue& value : assessment.values) {
        for (const std::string& note : value.notes)
            text.sentence(oil::quantity_name(value.written.quantity) + ": " + note);
        if (value.verdicts.size() < 2) continue;
        for (const oil::RuleVerdict& verdict : value.verdicts) {
            if (verdict.row == nullptr) continue;
            text.sentence(oil::quantity_name(value.written.quantity) + " by " + value.set + ", " +
                          limit_words(*verdict.row) + ": " + std::string(oil::slug(verdict.ladder)) + ".");
        }
    }
    for (const std::string& caveat : assessment.caveats)
        text.sentence("Caveat of " + caveat);
}

void add_sources(Document& text, const SampleAssessment& assessment) {
    std::vector<std::string> seen;
    document::Facts facts;
    for (const RatedValue& value : assessment.values) {
        const bool known = std::find(seen.begin(), seen.end(), value.set) != seen.end();
        if (value.ladder == Ladder::unrated || value.set.empty() || known) continue;
        seen.push_back(value.set);
        facts.lines.emplace_back(value.set, value.source);
    }
    if (!facts.lines.empty()) text.heading("Sources", 3).facts(facts);
}

} // namespace sumpbook::compose
