// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/render/marks.h"

#include "reports/plot/mark_shape.h"

#include <QPolygonF>

namespace sumpbook::render {

namespace {

constexpr double hatch_step_px = 7;

/// Parallel lines through the box: from (x, bottom) to (x + lean, top), clipped by who draws.
void add_lines(QPainterPath& path, const QRectF& box, double lean) {
    const double first = box.left() - std::abs(lean);
    for (double x = first; x <= box.right() + std::abs(lean); x += hatch_step_px) {
        path.moveTo(x, box.bottom());
        path.lineTo(x + lean, box.top());
    }
}

void add_levels(QPainterPath& path, const QRectF& box) {
    for (double y = box.bottom() - hatch_step_px / 2; y > box.top(); y -= hatch_step_px) {
        path.moveTo(box.left(), y);
        path.lineTo(box.right(), y);
    }
}

} // namespace

QPainterPath mark_path(plot::Mark mark, QPointF centre, double across) {
    QPainterPath path;
    const double half = across / 2 * plot::mark_share(mark);
    if (mark == plot::Mark::circle) path.addEllipse(centre, half, half);
    QPolygonF shape;
    for (const plot::Corner& corner : plot::corners(mark))
        shape << centre + QPointF(corner.x, corner.y) * half;
    if (shape.isEmpty()) return path;
    path.addPolygon(shape);
    path.closeSubpath();
    return path;
}

QPainterPath hatch_path(plot::Hatch hatch, const QRectF& box) {
    QPainterPath path;
    switch (hatch) {
    case plot::Hatch::none:
        break;
    case plot::Hatch::rising:
        add_lines(path, box, box.height());
        break;
    case plot::Hatch::falling:
        add_lines(path, box, -box.height());
        break;
    case plot::Hatch::level:
        add_levels(path, box);
        break;
    case plot::Hatch::upright:
        add_lines(path, box, 0);
        break;
    case plot::Hatch::crossed:
        add_lines(path, box, box.height());
        add_lines(path, box, -box.height());
        break;
    }
    return path;
}

QScatterSeries::MarkerShape marker_shape(plot::Mark mark) {
    switch (mark) {
    case plot::Mark::square:
        return QScatterSeries::MarkerShapeRectangle;
    case plot::Mark::triangle:
        return QScatterSeries::MarkerShapeTriangle;
    case plot::Mark::diamond:
        return QScatterSeries::MarkerShapeRotatedRectangle;
    case plot::Mark::star:
        return QScatterSeries::MarkerShapeStar;
    case plot::Mark::pentagon:
        return QScatterSeries::MarkerShapePentagon;
    case plot::Mark::circle:
    case plot::Mark::none:
        break;
    }
    return QScatterSeries::MarkerShapeCircle;
}

} // namespace sumpbook::render
