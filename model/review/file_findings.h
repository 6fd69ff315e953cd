// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/garage.h"
#include "model/review/finding.h"
#include "model/store/garage_file.h"

#include <vector>

namespace sumpbook::review {

/// What a garage file that verifies still shows about itself: its runs of entries, a save that was cut short,
/// parts left out, attachments, times and versions, fingerprints. `now`: this computer's clock; `damaged`:
/// what GarageFile::damaged_attachments found.
[[nodiscard]] std::vector<Finding> file_findings(const store::GarageFile& file, const Garage& garage,
                                                 RecordedTime now,
                                                 const std::vector<store::Hash256>& damaged);

} // namespace sumpbook::review
