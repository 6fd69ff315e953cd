// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/render/pdf.h"

#include "reports/render/pages.h"
#include "reports/render/theme.h"

#include <QAbstractTextDocumentLayout>
#include <QBuffer>
#include <QFontMetricsF>
#include <QPainter>
#include <QPdfWriter>

namespace sumpbook::render {

namespace {

constexpr int dots_an_inch = 300;
constexpr double margin_mm = 18;
constexpr double foot_points = 8;
constexpr double points_an_inch = 72;

double dots(double points) { return points * dots_an_inch / points_an_inch; }

void set_up(QPdfWriter& writer, const QString& title) {
    writer.setPageSize(QPageSize(QPageSize::A4));
    writer.setPageMargins({margin_mm, margin_mm, margin_mm, margin_mm}, QPageLayout::Millimeter);
    writer.setResolution(dots_an_inch);
    writer.setTitle(title);
    writer.setCreator(QStringLiteral("Sumpbook"));
}

void paint_foot(QPainter& painter, QSizeF area, const QString& title, int page, int pages) {
    painter.setFont(font(dots(foot_points)));
    painter.setPen(qcolor(plot::surface(plot::Background::light).soft_text));
    const QFontMetricsF metrics(painter.font());
    const QString number = QStringLiteral("page %1 of %2").arg(page).arg(pages);
    const double room = area.width() - metrics.horizontalAdvance(number) - dots(2 * foot_points);
    const double baseline = area.height() + dots(2.5 * foot_points);
    painter.drawText(QPointF(0, baseline), metrics.elidedText(title, Qt::ElideRight, room));
    painter.drawText(QPointF(area.width() - metrics.horizontalAdvance(number), baseline), number);
}

/// The moment of making, which Qt writes whether wanted or not, is blanked: the entry is optional (ISO
/// 32000-1, from memory), and blanks of the same length leave every offset of the file as it was.
QByteArray without_moment(QByteArray bytes) {
    const QByteArray key = "/CreationDate (";
    for (auto at = bytes.indexOf(key); at >= 0; at = bytes.indexOf(key)) {
        const auto end = bytes.indexOf(')', at);
        if (end < 0) break;
        for (auto i = at; i <= end; ++i)
            bytes[i] = ' ';
    }
    return bytes;
}

} // namespace

QByteArray pdf(const document::Document& document, const QString& title,
               const std::optional<plot::QrCode>& code) {
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    {
        QPdfWriter writer(&buffer);
        set_up(writer, title);
        const QSizeF area(writer.width(), writer.height());
        QTextDocument pages;
        fill_pages(pages, document, area, dots_an_inch, code);
        QPainter painter(&writer);
        const int count = pages.pageCount();
        for (int page = 0; page < count; ++page) {
            if (page > 0) writer.newPage();
            painter.save();
            painter.translate(0, -page * area.height());
            QAbstractTextDocumentLayout::PaintContext context;
            context.clip = QRectF(0, page * area.height(), area.width(), area.height());
            painter.setClipRect(context.clip);
            pages.documentLayout()->draw(&painter, context);
            painter.restore();
            paint_foot(painter, area, title, page + 1, count);
        }
    }
    return without_moment(bytes);
}

} // namespace sumpbook::render
