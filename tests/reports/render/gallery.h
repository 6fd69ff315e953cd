// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "reports/document/document.h"
#include "reports/plot/plot.h"

#include <string>
#include <utility>
#include <vector>

namespace sumpbook::gallery {

/// Invented pictures that between them show everything a plot can hold; names are file names.
[[nodiscard]] std::vector<std::pair<std::string, plot::Plot>> pictures();

/// An invented report with every kind of block: a table of many columns, one with a word wider than the page,
/// one of more rows than a page has, and all pictures.
[[nodiscard]] document::Document report();

} // namespace sumpbook::gallery
