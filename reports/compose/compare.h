// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/settings.h"
#include "model/review/before_after.h"
#include "reports/document/document.h"
#include "reports/document/value.h"

#include <optional>
#include <string>
#include <vector>

namespace sumpbook::compose {

/// A bike held against itself before and after something.
struct CompareReport {
    std::string bike;
    review::Cut cut;
    std::optional<std::string> modification; ///< What was changed; absent: a plain date.
    std::vector<review::Compared> series;
};

/// {"schema": 1, "bike": ..., "date": ..., "items": [{"kind": "fuel", "shift": "lower", ...}]}.
[[nodiscard]] document::Value compare_json(const CompareReport& report);
/// Medians of both sides and what they are worth in plain words; with `why` the figures of the tests.
[[nodiscard]] document::Document compare_text(const CompareReport& report, const GarageSettings& settings,
                                              bool why);

} // namespace sumpbook::compose
