// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "reports/plot/layout.h"
#include "reports/render/theme.h"

#include <QChart>

class QValueAxis;

namespace sumpbook::render {

/// Adds ribbons, bars, lines and marks of a plot, in this order, to a chart whose axes are straight in what
/// the layout's scales are straight in. Points without a place on their axis are left out and the line is
/// not drawn over them. Each run is a line of its own.
void add_series(QChart& chart, QValueAxis& across, QValueAxis& up, const plot::Plot& plot,
                const plot::Layout& layout, Theme theme);

} // namespace sumpbook::render
