// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/garage.h"
#include "model/review/finding.h"
#include "model/store/chain_index.h"

#include <vector>

namespace sumpbook::review {

/// `entry-conflict`: everything about these bikes, entry or not, that was changed in two places and not
/// settled; with `of_garage` the settings too.
[[nodiscard]] std::vector<Finding> conflict_findings(const std::vector<const Bike*>& bikes, bool of_garage,
                                                     const std::vector<NamedRecord>& records);

/// `entry-erased`: entries of these bikes that were erased, each with the day and, where it is held, the reason.
[[nodiscard]] std::vector<Finding> erased_findings(const std::vector<const Bike*>& bikes,
                                                   const store::ChainIndex& index,
                                                   const std::vector<NamedRecord>& records);

} // namespace sumpbook::review
