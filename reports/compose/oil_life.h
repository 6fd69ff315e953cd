// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/oil/oil_life.h"
#include "reports/document/document.h"
#include "reports/document/value.h"

#include <vector>

namespace sumpbook::compose {

/// One item a bike: bike, oil, in_use, earliest_km, middle_km, latest_km, interval, marks and what they rest
/// on.
[[nodiscard]] document::Value oil_life_json(const std::vector<oil::OilLife>& lives);
/// How long the oil lasts, how sure that is and what to do, then every mark. `why` adds the samples behind
/// the lines and the sources.
[[nodiscard]] document::Document oil_life_text(const std::vector<oil::OilLife>& lives, bool why);

} // namespace sumpbook::compose
