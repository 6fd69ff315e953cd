// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/quantity/units.h"
#include "model/review/faults.h"
#include "reports/document/document.h"
#include "reports/document/value.h"

#include <string>
#include <vector>

namespace sumpbook::compose {

/// The fault codes of one bike.
struct BikeFaults {
    std::string bike;
    DistanceUnit dial_unit = DistanceUnit::km;
    std::vector<review::FaultHistory> codes;
};

/// {"schema": 1, "items": [{"bike": ..., "code": ..., "state": ...}]}, one item a code.
[[nodiscard]] document::Value faults_json(const std::vector<BikeFaults>& bikes);
/// A line a code and what to do about each; with `details` every reading of it as well.
[[nodiscard]] document::Document faults_text(const std::vector<BikeFaults>& bikes, bool details);

} // namespace sumpbook::compose
