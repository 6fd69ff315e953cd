// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/reports/render/drawn_faults.h"

#include "reports/render/painted_parts.h"

#include <QAbstractBarSeries>
#include <QAreaSeries>
#include <QBarSet>
#include <QGraphicsScene>
#include <QGraphicsSimpleTextItem>
#include <QGraphicsTextItem>
#include <QImage>
#include <QLineSeries>
#include <QPainter>
#include <QXYSeries>

#include <algorithm>

namespace sumpbook::test {

namespace {

struct Written {
    QString text;
    QRectF box;
};

QImage picture_of(QGraphicsScene& scene, const QChart& chart) {
    QImage image(chart.size().toSize(), QImage::Format_RGB32);
    image.fill(Qt::white);
    QPainter painter(&image);
    const QRectF all(QPointF(0, 0), chart.size());
    scene.render(&painter, all, all);
    return image;
}

std::vector<Written> written_in(const QGraphicsScene& scene) {
    std::vector<Written> found;
    for (const QGraphicsItem* item : scene.items()) {
        QString text;
        if (const auto* simple = dynamic_cast<const QGraphicsSimpleTextItem*>(item)) text = simple->text();
        if (const auto* rich = dynamic_cast<const QGraphicsTextItem*>(item)) text = rich->toPlainText();
        // A word's own letters, without the leading above and below.
        if (item->isVisible() && !text.isEmpty())
            found.push_back({text, item->sceneBoundingRect().adjusted(1, 2, -1, -2)});
    }
    return found;
}

bool has_data(const QAbstractSeries& series) {
    if (const auto* points = dynamic_cast<const QXYSeries*>(&series)) return points->count() > 0;
    if (const auto* area = dynamic_cast<const QAreaSeries*>(&series)) return area->upperSeries()->count() > 1;
    if (const auto* bars = dynamic_cast<const QAbstractBarSeries*>(&series)) {
        for (const QBarSet* set : bars->barSets())
            if (set->sum() > 0) return true;
    }
    return false;
}

void look_at_words(std::vector<std::string>& found, const QGraphicsScene& scene, const QChart& chart) {
    const std::vector<Written> words = written_in(scene);
    const QRectF all(QPointF(0, 0), chart.size());
    for (std::size_t i = 0; i < words.size(); ++i) {
        if (!all.contains(words[i].box)) found.push_back(words[i].text.toStdString() + " leaves the chart");
        for (std::size_t j = 0; j < i; ++j)
            if (words[i].box.intersects(words[j].box))
                found.push_back(words[i].text.toStdString() + " lies on " + words[j].text.toStdString());
    }
}

/// Hides each series in turn: a series that is seen changes the picture.
void look_at_series(std::vector<std::string>& found, QGraphicsScene& scene, const QChart& chart) {
    const QImage whole = picture_of(scene, chart);
    for (QAbstractSeries* series : chart.series()) {
        if (!has_data(*series)) continue;
        series->hide();
        if (picture_of(scene, chart) == whole)
            found.push_back("nothing is seen of the series " + series->name().toStdString());
        series->show();
    }
}

} // namespace

std::vector<std::string> drawn_faults(QChart& chart) {
    std::vector<std::string> found;
    QGraphicsScene scene;
    scene.addItem(&chart);
    const QList<QGraphicsItem*> items = scene.items();
    const QList<QAbstractSeries*> series = chart.series();
    const bool spans = std::ranges::any_of(items, [](const QGraphicsItem* item) {
        return item->type() == render::SpanItem::item_type && item->isVisible();
    });
    if (!spans && std::ranges::none_of(series, [](const QAbstractSeries* s) { return has_data(*s); }))
        found.emplace_back("the chart has no data");
    look_at_words(found, scene, chart);
    look_at_series(found, scene, chart);
    scene.removeItem(&chart);
    return found;
}

} // namespace sumpbook::test
