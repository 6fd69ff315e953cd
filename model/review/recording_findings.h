// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/garage.h"
#include "model/review/finding.h"
#include "model/store/garage_file.h"

#include <vector>

namespace sumpbook::review {

/// What is odd about when records were written and what they stand for: a run of entries in which the time
/// recorded goes back by more than a day, records of a later day than `now` by more than a day, and records
/// that stand for a version that is not held. One finding for each run of entries (a chain) and kind.
[[nodiscard]] std::vector<Finding> recording_findings(const store::GarageFile& file, const Garage& garage,
                                                      RecordedTime now);

} // namespace sumpbook::review
