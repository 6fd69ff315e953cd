// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/garage.h"
#include "model/review/finding.h"
#include "model/store/garage_file.h"

#include <vector>

namespace sumpbook::review {

/// Attachments whose bytes are damaged (`damaged`: their part hashes, as `damaged_attachments` found them),
/// those that no entry names, and files that an entry names and that are not here. Ones that were left out on
/// purpose are no finding.
[[nodiscard]] std::vector<Finding> attachment_findings(const store::GarageFile& file, const Garage& garage,
                                                       const std::vector<store::Hash256>& damaged);

} // namespace sumpbook::review
