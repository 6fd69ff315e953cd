// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/garage.h"
#include "model/review/finding.h"

#include <vector>

namespace sumpbook::review {

/// What jobs and measures leave open: torques that are likely slips of the pen (`torque-unusual`), fasteners
/// whose paint mark moved and that nobody tightened since (`paint-mark-moved`), a clutch lever last measured
/// without free play (`clutch-no-free-play`; common practice, no source), and a rev limit set for running in
/// that was not lifted with the first service (`run-in-limit-kept`; common practice, no source).
[[nodiscard]] std::vector<Finding> workshop_findings(const Bike& bike);

} // namespace sumpbook::review
