// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/oil/oil_compare.h"
#include "reports/document/document.h"
#include "reports/document/value.h"

namespace sumpbook::compose {

/// bike, first, second, word, fills needed, metals (rates, shift with its range, test) and notes.
[[nodiscard]] document::Value oil_compare_json(const oil::OilComparison& comparison);
/// Which side wears the engine less, or how many fills it takes to tell; then metal by metal. `why` adds the
/// tests.
[[nodiscard]] document::Document oil_compare_text(const oil::OilComparison& comparison, bool why);

} // namespace sumpbook::compose
