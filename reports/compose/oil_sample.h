// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/oil/assess.h"
#include "reports/document/document.h"

#include <string>

namespace sumpbook::compose {

// What is shown of one sample, piece by piece, for the answer of a command and for a report alike.

/// Bike, number and day, verdict, next step, the oil and how far it ran, and what the laboratory says.
[[nodiscard]] document::Facts sample_facts(const oil::SampleAssessment& assessment);
/// Every value with the new oil's, its verdict, level, limit and set; rates where there are any.
[[nodiscard]] document::Table sample_values(const oil::SampleAssessment& assessment);
/// "Not judged: nickel and titanium. The profile has no published limit for them.", one a reason.
void add_unrated(document::Document& text, const oil::SampleAssessment& assessment);
/// "Possible cause: ... (seen in copper and lead). Source: ...".
[[nodiscard]] std::string pattern_sentence(const oil::PatternFound& pattern);
[[nodiscard]] bool has_earlier_wear(const oil::SampleAssessment& assessment);
/// Wear in 1 000 km of each metal, beside what was usual in earlier fills.
[[nodiscard]] document::Table wear_table(const oil::SampleAssessment& assessment);
/// "Copper can come from big-end and main bearings, ...", for what stands out.
void add_element_sources(document::Document& text, const oil::SampleAssessment& assessment);
/// What was assumed for the rates of wear, each said once.
void add_wear_notes(document::Document& text, const oil::SampleAssessment& assessment);
/// The notes of values and what each of several limits says, and the caveats of the sets.
void add_notes(document::Document& text, const oil::SampleAssessment& assessment);
/// The sets that judged, with where they were published.
void add_sources(document::Document& text, const oil::SampleAssessment& assessment);

} // namespace sumpbook::compose
