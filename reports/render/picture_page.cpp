// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/render/picture_page.h"

#include "reports/render/chart.h"

#include <QBuffer>
#include <QGraphicsScene>
#include <QPainter>
#include <QPdfWriter>

namespace sumpbook::render {

QByteArray picture_page(const plot::Plot& plot, QSize logical_size) {
    constexpr double points_a_pixel = 72.0 / 96.0;
    constexpr int dots_an_inch = 300;
    if (logical_size.isEmpty()) return {};
    QGraphicsScene scene;
    scene.addItem(chart(plot, Theme::light, logical_size)); // the scene owns it
    scene.setSceneRect(QRectF(QPointF(), QSizeF(logical_size)));
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    QPdfWriter writer(&buffer);
    writer.setResolution(dots_an_inch);
    writer.setTitle(QString::fromStdString(plot.title));
    writer.setCreator("Sumpbook");
    writer.setPageSize(QPageSize(QSizeF(logical_size) * points_a_pixel, QPageSize::Point));
    writer.setPageMargins({});
    QPainter painter(&writer);
    scene.render(&painter, {}, scene.sceneRect());
    painter.end();
    return bytes;
}

} // namespace sumpbook::render
