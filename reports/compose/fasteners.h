// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/review/fasteners.h"
#include "reports/document/document.h"
#include "reports/document/value.h"

#include <vector>

namespace sumpbook::compose {

/// What a job tightened and which paint marks it looked at, with what is recorded of them since.
struct JobFasteners {
    std::vector<review::Fastener> tightened;
    std::vector<review::MarkSeen> looked_at;
};

/// {"tightened": [...], "paint_marks_seen": [...]}; null where both are empty.
[[nodiscard]] document::Value fasteners_json(const JobFasteners& fasteners);
/// Empty where both are empty.
[[nodiscard]] document::Document fasteners_text(const JobFasteners& fasteners);

} // namespace sumpbook::compose
