// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/garage.h"
#include "model/oil/assess.h"

#include <string>
#include <vector>

namespace sumpbook::compose {

// How far an oil report can be trusted. `samples` are those of one compartment of a bike, oldest first, at
// least one; the last one is answered for.

/// How sure the answer is in plain words, first; then how many samples, over how long, and judged by what.
[[nodiscard]] std::vector<std::string> certainty_answer(const std::vector<oil::SampleAssessment>& samples);
/// Which of the earlier samples stood at `watch` or `act`, what has been since, and, after the last of them,
/// what work is recorded until the next sample; `bike` null: no work is looked for. Empty for a first sample.
[[nodiscard]] std::vector<std::string> past_answer(const std::vector<oil::SampleAssessment>& samples,
                                                   const Bike* bike);

} // namespace sumpbook::compose
