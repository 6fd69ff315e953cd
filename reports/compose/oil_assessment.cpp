// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/oil_assessment.h"

#include "reports/compose/oil_sample.h"
#include "reports/compose/oil_words.h"

namespace sumpbook::compose {
namespace {

using document::Document;
using oil::SampleAssessment;

void add_sample(Document& text, const SampleAssessment& assessment, bool why) {
    text.heading(assessment.bike + ", sample " + assessment.sample + " of " + spelled_text(assessment.date));
    text.sentence(marked(assessment.whole.word) + ". " + findings_words(assessment),
                  colour(assessment.whole.word));
    text.sentence(advice_words(assessment));
    text.sentence(certainty_words(assessment));
    text.facts(sample_facts(assessment));
    text.table(sample_values(assessment));
    const std::string viscosity = viscosity_words(assessment);
    if (!viscosity.empty()) text.sentence(viscosity);
    if (assessment.coolant.is_named() && !assessment.coolant.may_be_coolant)
        text.sentence("Sodium or potassium is high; this bike has no coolant, so salt or an additive is the "
                      "likely reason.");
    for (const auto& pattern : assessment.patterns)
        text.sentence(pattern_sentence(pattern));
    add_unrated(text, assessment);
    add_element_sources(text, assessment);
    if (!assessment.wear.empty() && (why || has_earlier_wear(assessment))) text.table(wear_table(assessment));
    if (why) add_wear_notes(text, assessment);
    if (why) add_notes(text, assessment);
    add_sources(text, assessment);
    for (const std::string& caution : assessment.cautions)
        text.sentence(caution, document::Severity::caution);
}

} // namespace

Document oil_assessment_text(const std::vector<SampleAssessment>& samples, bool why) {
    Document text;
    if (samples.empty()) {
        text.sentence(
            "No sample of used oil is recorded. Write one with: sumpbook -g FILE -b BIKE add sample --help");
        return text;
    }
    for (const SampleAssessment& assessment : samples)
        add_sample(text, assessment, why);
    return text;
}

} // namespace sumpbook::compose
