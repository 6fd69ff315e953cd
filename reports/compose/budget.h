// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/cost/budget.h"
#include "reports/document/document.h"
#include "reports/document/value.h"

#include <vector>

namespace sumpbook::compose {

/// {"schema": 1, "items": [...]}: one yearly budget each.
[[nodiscard]] document::Value budget_json(const std::vector<cost::BudgetLine>& lines);
[[nodiscard]] document::Document budget_text(const std::vector<cost::BudgetLine>& lines, const Date& today);

} // namespace sumpbook::compose
