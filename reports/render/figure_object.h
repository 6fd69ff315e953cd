// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "reports/plot/plot.h"

#include <QObject>
#include <QTextCharFormat>
#include <QTextObjectInterface>

#include <memory>

namespace sumpbook::render {

/// A figure within a document of Qt: as wide as the page, drawn as vectors.
class FigureObject : public QObject, public QTextObjectInterface {
    Q_OBJECT
    Q_INTERFACES(QTextObjectInterface)

public:
    static constexpr int object_type = QTextFormat::UserObject + 1;

    /// `width` in the pixels of the device the document is laid out for.
    FigureObject(double width, QObject* parent);

    /// The format of the character that stands for a figure.
    [[nodiscard]] static QTextCharFormat format_for(std::shared_ptr<const plot::Plot> plot);

    QSizeF intrinsicSize(QTextDocument* document, int position, const QTextFormat& format) override;
    void drawObject(QPainter* painter, const QRectF& box, QTextDocument* document, int position,
                    const QTextFormat& format) override;

private:
    double width_;
};

} // namespace sumpbook::render

Q_DECLARE_METATYPE(std::shared_ptr<const sumpbook::plot::Plot>)
