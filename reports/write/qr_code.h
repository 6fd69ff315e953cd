// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "reports/plot/qr_code.h"

#include <string>

namespace sumpbook::write {

/// For a terminal, with its light margin: half a symbol a square. With `colour`, white and black whatever the
/// terminal's own ground; without, the light squares are inked, so that it is right on a dark ground.
[[nodiscard]] std::string qr_blocks(const plot::QrCode& code, bool colour);

/// An SVG element of 40 mm, black on white with its margin, for a page or as a file of its own; `title` says
/// what it holds.
[[nodiscard]] std::string qr_svg(const plot::QrCode& code, const std::string& title);

} // namespace sumpbook::write
