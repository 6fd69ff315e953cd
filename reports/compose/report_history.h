// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/garage.h"
#include "model/review/finding.h"
#include "model/review/record_gaps.h"
#include "reports/compose/history_corrections.h"
#include "reports/compose/report_front.h"

#include <vector>

namespace sumpbook::compose {

/// The history of one bike and what is odd about it.
struct HistoryOfBike {
    const Bike* bike = nullptr; ///< As it stood on the report's day.
    std::vector<review::Finding> findings;
    std::vector<review::RecordGap> gaps;
    std::vector<Correction> corrections;
    Pictures pictures;
};

/// For somebody who thinks of buying: everything done, in order, with what it can be shown by; the gaps, the
/// doubts, and what was corrected or withdrawn. Money, notes, places, names of people and the plate are left
/// out.
[[nodiscard]] document::Document report_history(const ReportFront& front,
                                                const std::vector<HistoryOfBike>& bikes);

} // namespace sumpbook::compose
