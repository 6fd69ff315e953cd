// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/review/finding.h"
#include "model/store/recover.h"

#include <vector>

namespace sumpbook::review {

/// What is wrong with a file that does not open, as a recovery found it: each stretch that does not verify,
/// and the frames that must be missing.
[[nodiscard]] std::vector<Finding> damage_findings(const store::RecoverPlan& plan);

} // namespace sumpbook::review
