// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/review/finding.h"
#include "reports/document/document.h"
#include "reports/document/value.h"

#include <vector>

namespace sumpbook::compose {

[[nodiscard]] document::Array findings_json(const std::vector<review::Finding>& findings);
/// One line a finding, worst first; a sentence where there is none.
[[nodiscard]] document::Document findings_text(const std::vector<review::Finding>& findings);

} // namespace sumpbook::compose
