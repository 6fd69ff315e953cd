// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/import/plan.h"
#include "reports/document/document.h"
#include "reports/document/value.h"

namespace sumpbook::cli {

/// What was found in the file, what would be added, what is doubtful and what stays out. `in_full`: every
/// entry is listed; otherwise only the doubts, the duplicates, what is kept out, and the counts.
[[nodiscard]] document::Value import_json(const import::ImportPlan& plan, bool in_full);
[[nodiscard]] document::Document import_text(const import::ImportPlan& plan, bool in_full);

} // namespace sumpbook::cli
