// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/oil/assess.h"
#include "reports/document/document.h"

#include <string>

namespace sumpbook::compose {

// What is said of oil, in words. A word and a mark always say the same as the colour.

[[nodiscard]] document::Severity colour(oil::Ladder ladder);
[[nodiscard]] document::Severity colour(oil::Word word);
/// A filled circle, triangle or square before the word; an empty circle where nothing is said.
[[nodiscard]] std::string marked(oil::Ladder ladder);
[[nodiscard]] std::string marked(oil::Word word);

/// "above 20 mg/kg", "57 % lost or more", "any amount".
[[nodiscard]] std::string limit_words(const oil::LimitRow& limit);
/// What to do next, a full sentence.
[[nodiscard]] std::string advice_words(const oil::SampleAssessment& assessment);
/// What stands out, or that nothing does: full sentences, worst first.
[[nodiscard]] std::string findings_words(const oil::SampleAssessment& assessment);
/// What the word rests on and what is missing: full sentences.
[[nodiscard]] std::string certainty_words(const oil::SampleAssessment& assessment);
/// Change, grade, index and fuel by viscosity: full sentences; empty where no viscosity was measured.
[[nodiscard]] std::string viscosity_words(const oil::SampleAssessment& assessment);
/// "28 ppm in 10 h", "2 to 4 ppm in 10 h, unreliable".
[[nodiscard]] std::string rate_words(const oil::ElementRate& rate);
/// The same with the rate by distance: "28 ppm in 10 h, 56 in 1 000 km".
[[nodiscard]] std::string rate_and_distance_words(const oil::ElementRate& rate);

} // namespace sumpbook::compose
