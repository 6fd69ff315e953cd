// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace sumpbook::plot {

// How much room a text takes, without asking a font, so that every machine lays a picture out the same.

/// An upper estimate of the width of a text in pixels, in a plain sans face of `font_px` pixels. The widths
/// are those of DejaVu Sans 2.37 (read with a font tool), rounded up by classes of letters; it is the widest
/// of the common sans faces, so others fit as well. Letters and signs outside Latin, Greek and Cyrillic count
/// a full em.
[[nodiscard]] double text_width(std::string_view utf8, double font_px, bool bold = false);

/// The text, or its beginning with an ellipsis where it is wider than `width_px`; empty where not even one
/// letter and the ellipsis fit.
[[nodiscard]] std::string shortened(std::string_view utf8, double width_px, double font_px,
                                    bool bold = false);

/// Lines broken at blanks, at most `lines`, the last one shortened where the text goes on.
[[nodiscard]] std::vector<std::string> wrapped(std::string_view utf8, double width_px, double font_px,
                                               std::size_t lines, bool bold = false);

/// "48 210", "-1 234.50": a finite number below 10^15 with `decimals` digits after the point, groups of three
/// by plain blanks, whatever the locale.
[[nodiscard]] std::string grouped_number(double number, int decimals);

} // namespace sumpbook::plot
