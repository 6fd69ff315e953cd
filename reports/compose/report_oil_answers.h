// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/oil/assess.h"
#include "reports/document/document.h"

#include <string>
#include <vector>

namespace sumpbook::compose {

// The short answers at the top of an oil report. `samples` are those of one compartment of a bike, oldest
// first, at least one; the last one is answered for.

/// Whether the engine is wearing: what the wear metals and their rates say, with the mark and word first.
[[nodiscard]] document::Sentence wear_answer(const std::vector<oil::SampleAssessment>& samples);
/// Whether the oil is fit for more: all that is not a wear metal.
[[nodiscard]] document::Sentence fitness_answer(const oil::SampleAssessment& latest);
/// What was taken to be so, each said once; never empty.
[[nodiscard]] std::vector<std::string> assumption_answer(const oil::SampleAssessment& latest);

} // namespace sumpbook::compose
