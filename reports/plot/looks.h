// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "reports/plot/layout.h"

namespace sumpbook::plot {

/// The part of `faults` that asks whether what is drawn can be told apart and is named: two series, or two
/// parts of the bars, of the same colour on light or on dark; or that neither brightness nor mark, stroke or
/// hatch tells apart in grey; series and bars among several, and spans, that no word is given to.
[[nodiscard]] std::vector<std::string> looks_faults(const Plot& plot, const Layout& layout);

} // namespace sumpbook::plot
