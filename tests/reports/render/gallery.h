// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "reports/plot/plot.h"

#include <string>
#include <utility>
#include <vector>

namespace sumpbook::gallery {

/// Invented pictures that between them show everything a plot can hold; names are file names.
[[nodiscard]] std::vector<std::pair<std::string, plot::Plot>> pictures();

} // namespace sumpbook::gallery
