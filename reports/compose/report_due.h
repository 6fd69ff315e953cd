// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/upkeep/due_item.h"
#include "reports/compose/report_front.h"

#include <vector>

namespace sumpbook::compose {

/// What to do now, what to find out, what comes soon and what later; then all of it in a table with the
/// days and what they rest on. `items` worst first; `pictures` of the windows, if there are any.
[[nodiscard]] document::Document
report_due(const ReportFront& front, const std::vector<upkeep::DueItem>& items, const Pictures& pictures);

} // namespace sumpbook::compose
