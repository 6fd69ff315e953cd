// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/oil/limit_sets.h"
#include "reports/document/document.h"
#include "reports/document/value.h"

#include <vector>

namespace sumpbook::compose {

/// Limit sets with their scope, caveat and source; of a single set also every limit.
[[nodiscard]] document::Value oil_limits_json(const std::vector<const oil::LimitSet*>& sets);
[[nodiscard]] document::Document oil_limits_text(const std::vector<const oil::LimitSet*>& sets);

} // namespace sumpbook::compose
