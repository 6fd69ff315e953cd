// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/oil/assess.h"
#include "model/oil/oil_trend.h"
#include "reports/compose/report_front.h"

#include <string>
#include <vector>

namespace sumpbook::compose {

/// The oil of one bike: its samples of used oil, oldest first, where each quantity is going, and the
/// pictures.
struct OilOfBike {
    std::string bike;
    const Bike* record = nullptr; ///< To tell what was done after a bad sample; null: that is left out.
    std::vector<oil::SampleAssessment> samples;
    std::vector<oil::QuantityTrend> trends;
    Pictures pictures;
};

/// For an owner or a buyer who has nothing else at hand: is the engine wearing, is the oil fit, what next,
/// how sure is that, what was assumed; then the latest sample against its limits, the samples over time,
/// possible causes, what is missing and the sources.
[[nodiscard]] document::Document report_oil(const ReportFront& front, const std::vector<OilOfBike>& bikes);

} // namespace sumpbook::compose
