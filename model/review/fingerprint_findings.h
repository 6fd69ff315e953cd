// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/review/finding.h"
#include "model/store/garage_file.h"

#include <vector>

namespace sumpbook::review {

/// The fingerprints whose printing is recorded in the file, held against the file: those that no longer line
/// up, those that cover something that is not here, and those of which nothing is here.
[[nodiscard]] std::vector<Finding> fingerprint_findings(const store::GarageFile& file);

} // namespace sumpbook::review
