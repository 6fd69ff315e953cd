// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/oil/assess.h"
#include "reports/document/document.h"
#include "reports/document/value.h"

#include <vector>

namespace sumpbook::compose {

/// One item a sample: bike, sample, sample_date, values, word, advice; then what stands behind them.
[[nodiscard]] document::Value oil_assessment_json(const std::vector<oil::SampleAssessment>& samples);
/// Plain words first: what, how sure, what to do; then the values, possible causes, sources and cautions.
/// `why` adds each value's reasons.
[[nodiscard]] document::Document oil_assessment_text(const std::vector<oil::SampleAssessment>& samples,
                                                     bool why);

} // namespace sumpbook::compose
