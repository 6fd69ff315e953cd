// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/import/layout.h"
#include "model/import/plan.h"

#include <string>
#include <vector>

namespace sumpbook::import {

/// What was taken for granted about a file, a sentence each: units and currency that neither heading nor
/// option names, blank cells that a column explains, times of day left out.
[[nodiscard]] std::vector<std::string> notices_of(const ImportPlan& plan, const Table& table,
                                                  const Garage& garage);

} // namespace sumpbook::import
