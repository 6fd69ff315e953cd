// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "reports/plot/plot.h"

#include <string>

namespace sumpbook::plot {

/// The numbers of a picture as sentences, for those who do not see it: "iron: 8 at 1 000, 12 at 3 000."
/// Days are spelled, hollow points named as such; of long series the first and the last points, and how many
/// lie between. Empty for an empty plot.
[[nodiscard]] std::string numbers_text(const Plot& plot);

} // namespace sumpbook::plot
