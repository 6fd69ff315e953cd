// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/render/figure_object.h"

#include "reports/plot/layout.h"
#include "reports/render/chart.h"

#include <QGraphicsScene>
#include <QPainter>
#include <QVariant>

namespace sumpbook::render {

namespace {

/// Pixels across a page: at the width of an A4 page the letters of a figure are about 9 points high.
constexpr double logical_width = 660;
constexpr int plot_property = QTextFormat::UserProperty + 1;

std::shared_ptr<const plot::Plot> plot_of(const QTextFormat& format) {
    return format.property(plot_property).value<std::shared_ptr<const plot::Plot>>();
}

} // namespace

FigureObject::FigureObject(double width, QObject* parent)
    : QObject(parent)
    , width_(width) {}

QTextCharFormat FigureObject::format_for(std::shared_ptr<const plot::Plot> plot) {
    QTextCharFormat format;
    format.setObjectType(object_type);
    format.setProperty(plot_property, QVariant::fromValue(std::move(plot)));
    return format;
}

QSizeF FigureObject::intrinsicSize(QTextDocument*, int, const QTextFormat& format) {
    return {width_, plot::good_height(*plot_of(format), logical_width) * width_ / logical_width};
}

void FigureObject::drawObject(QPainter* painter, const QRectF& box, QTextDocument*, int,
                              const QTextFormat& format) {
    const double height = logical_width * box.height() / box.width();
    const QRectF all(0, 0, logical_width, height);
    QGraphicsScene scene; // owns the chart
    scene.addItem(chart(*plot_of(format), Theme::light, all.size()));
    scene.render(painter, box, all);
}

} // namespace sumpbook::render
