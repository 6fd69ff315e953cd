// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "reports/plot/layout.h"

#include <string>
#include <string_view>

namespace sumpbook::write {

// The elements a picture is made of.

/// "first", "good": as in the names of classes.
[[nodiscard]] std::string_view tone_name(plot::Tone tone);

/// A number of pixels to a hundredth, "12.5", whatever the locale; 0 where it is not finite.
[[nodiscard]] std::string pixels(double number);

/// <rect class="..."> over a box.
[[nodiscard]] std::string rect(const plot::Box& box, const std::string& classes,
                               const std::string& more = {});
/// <line class="...">.
[[nodiscard]] std::string line(double x1, double y1, double x2, double y2, const std::string& classes,
                               const std::string& more = {});
/// A mark around a point in the tone's colour; hollow ones show the paper inside. Empty for Mark::none.
[[nodiscard]] std::string mark(plot::Mark shape, double x, double y, plot::Tone tone, bool hollow);
/// The attributes of a stroke: its width, and dashes where it has some.
[[nodiscard]] std::string stroke_attributes(plot::Stroke stroke, double width);
/// Name of the pattern of a tone's hatching in the picture `id`; empty where it has none.
[[nodiscard]] std::string hatch_name(std::string_view id, plot::Tone tone);
/// The patterns of all hatchings.
[[nodiscard]] std::string hatch_patterns(std::string_view id);

} // namespace sumpbook::write
