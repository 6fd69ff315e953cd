// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/render/image.h"

#include "reports/render/chart.h"

#include <QBuffer>
#include <QGraphicsScene>
#include <QPainter>

namespace sumpbook::render {

QImage image(const plot::Plot& plot, QSize logical_size, qreal scale, Theme theme) {
    if (logical_size.isEmpty() || !(scale > 0)) return {};
    QImage result(QSizeF(logical_size * scale).toSize(), QImage::Format_RGB32);
    result.setDevicePixelRatio(scale);
    result.fill(qcolor(plot::surface(background(theme)).paper));
    QGraphicsScene scene; // owns the chart
    scene.addItem(chart(plot, theme, logical_size));
    QPainter painter(&result);
    painter.setRenderHints(QPainter::Antialiasing | QPainter::TextAntialiasing);
    const QRectF all(QPointF(0, 0), logical_size);
    scene.render(&painter, all, all);
    return result;
}

QByteArray png(const plot::Plot& plot, QSize logical_size, qreal scale, Theme theme) {
    const QImage picture = image(plot, logical_size, scale, theme);
    QByteArray bytes;
    QBuffer buffer(&bytes);
    if (!picture.isNull() && buffer.open(QIODevice::WriteOnly)) picture.save(&buffer, "PNG");
    return bytes;
}

} // namespace sumpbook::render
