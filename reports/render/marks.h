// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "reports/plot/palette.h"
#include "reports/plot/plot.h"

#include <QPainterPath>
#include <QRectF>
#include <QScatterSeries>

#include <vector>

namespace sumpbook::render {

/// The outline of a mark about a point, as large as a circle `across` pixels wide; empty for Mark::none.
[[nodiscard]] QPainterPath mark_path(plot::Mark mark, QPointF centre, double across);

/// The lines of a hatch within a box; empty for Hatch::none.
[[nodiscard]] QPainterPath hatch_path(plot::Hatch hatch, const QRectF& box);

/// The shape of Qt Charts for a mark; a circle for Mark::none.
[[nodiscard]] QScatterSeries::MarkerShape marker_shape(plot::Mark mark);

} // namespace sumpbook::render
