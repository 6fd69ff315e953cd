// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "reports/plot/plot.h"

#include <string>
#include <string_view>

namespace sumpbook::write {

/// A plot as an SVG element for the inside of an HTML page: its title and description for those who cannot
/// see it, no script, no font and nothing else from outside. `id` is unique in the page and of letters,
/// digits and hyphens. Its colours are classes: the page carries `svg_style` once.
[[nodiscard]] std::string svg(const plot::Plot& plot, std::string_view id);

/// The colours of all pictures, on light and on dark ground.
[[nodiscard]] std::string svg_style();

/// The same as a file of its own, with its style in it, on light ground.
[[nodiscard]] std::string svg_file(const plot::Plot& plot);

} // namespace sumpbook::write
