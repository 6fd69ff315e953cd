// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "reports/plot/plot.h"
#include "reports/render/theme.h"

#include <QChart>

namespace sumpbook::render {

/// A plot as a chart of Qt, laid out by plot::lay_out and again whenever it is resized. Series, ribbons and
/// bars are drawn by Qt Charts; ticks, words, bands, rules, spans and the legend are our own items, so that
/// the picture is the same as in other formats. No animation; nothing is taken from the palette of the
/// desktop. The caller owns it, or a QChartView does after setChart (which does not delete the view's own
/// first chart). Needs a QApplication.
[[nodiscard]] QChart* chart(const plot::Plot& plot, Theme theme, QSizeF size);

} // namespace sumpbook::render
