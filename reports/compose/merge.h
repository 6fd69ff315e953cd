// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/store/merge.h"
#include "reports/compose/conflicts.h"
#include "reports/document/document.h"
#include "reports/document/value.h"

#include <string>
#include <vector>

namespace sumpbook::compose {

/// A merge as it was worked out and, later, written.
struct Merge {
    std::vector<std::string> from;    ///< Files, the first in front.
    std::vector<std::string> adopted; ///< Bikes taken over from another garage; empty: a union of copies.
    const store::MergePlan* plan = nullptr;
};

/// What would come together: shown before anything is written.
[[nodiscard]] document::Document merge_plan_text(const Merge& merge);

/// What was written, and what two copies changed apart.
[[nodiscard]] document::Document merged_text(const Merge& merge, const store::WrittenOut& written,
                                             const std::vector<OpenConflict>& conflicts);
/// Both in one.
[[nodiscard]] document::Value merged_json(const Merge& merge, const store::WrittenOut& written,
                                          const std::vector<OpenConflict>& conflicts);

} // namespace sumpbook::compose
