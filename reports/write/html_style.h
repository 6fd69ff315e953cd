// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string_view>

namespace sumpbook::write {

/// The style of an HTML report: on a screen, light and dark, and on paper. Holds neither < nor &, so that it
/// stands in HTML and in XML alike. Text keeps 4.5:1 to its ground (WCAG 2.2, 1.4.3).
[[nodiscard]] std::string_view html_style();

} // namespace sumpbook::write
