// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "reports/plot/palette.h"

#include <QColor>
#include <QFont>
#include <QPen>

namespace sumpbook::render {

/// The two looks of every picture; paper is always light.
enum class Theme { light, dark };

[[nodiscard]] plot::Background background(Theme theme);
[[nodiscard]] QColor qcolor(plot::Rgb colour);
[[nodiscard]] QColor qcolor(plot::Tone tone, Theme theme);

/// The plain sans face of pictures and pages: DejaVu Sans where it is installed, else the nearest sans, never
/// hinted, so that a picture is the same at every scale.
[[nodiscard]] QFont font(double pixels, bool bold = false);

/// A line of `width` in the stroke; Stroke::none gives Qt::NoPen. Dashes are in pixels, whatever the width.
[[nodiscard]] QPen pen(const QColor& colour, double width, plot::Stroke stroke = plot::Stroke::solid);

} // namespace sumpbook::render
