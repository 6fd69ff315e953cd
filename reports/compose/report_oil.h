// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/oil/assess.h"
#include "reports/compose/report_front.h"

#include <string>
#include <vector>

namespace sumpbook::compose {

/// The oil of one bike: its samples of used oil, oldest first, the pictures of them, and sentences on how the
/// metals went over the fills, where there are any.
struct OilOfBike {
    std::string bike;
    std::vector<oil::SampleAssessment> samples;
    Pictures pictures;
    document::Document trend;
};

/// For an owner or a buyer who has nothing else at hand: is the engine wearing, is the oil fit, what next,
/// how sure is that, what was assumed; then the latest sample against its limits, the samples over time,
/// possible causes, what is missing and the sources.
[[nodiscard]] document::Document report_oil(const ReportFront& front, const std::vector<OilOfBike>& bikes);

} // namespace sumpbook::compose
