// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/render/painted_parts.h"

#include "reports/render/marks.h"

#include <QFontMetricsF>
#include <QGraphicsSimpleTextItem>
#include <QPainter>

namespace sumpbook::render {

namespace {

constexpr double line_px = 2;
constexpr double hair_px = 1;
constexpr double span_mark_px = 10;

QRectF whole(const plot::Layout& layout) { return {0, 0, layout.size.width, layout.size.height}; }

void paint_bands(QPainter& painter, const plot::Layout& layout, Theme theme) {
    for (const plot::BandBox& band : layout.bands) {
        painter.fillRect(qrect(band.box), qcolor(plot::band_fill(band.tone, background(theme))));
        painter.fillRect(qrect(band.strip).adjusted(0, 1, 0, -1), qcolor(band.tone, theme));
    }
}

/// Where one band ends and the next begins, also in grey.
void paint_band_edges(QPainter& painter, const plot::Layout& layout, Theme theme) {
    painter.setPen(pen(qcolor(plot::surface(background(theme)).frame), hair_px));
    for (const plot::BandBox& band : layout.bands)
        for (const double y : {band.box.top, band.box.bottom()})
            if (y > layout.area.top + 1 && y < layout.area.bottom() - 1)
                painter.drawLine(QPointF(band.box.left, y), QPointF(band.strip.right(), y));
}

void paint_grid(QPainter& painter, const plot::Layout& layout, Theme theme) {
    const plot::Surface colours = plot::surface(background(theme));
    const QRectF area = qrect(layout.area);
    painter.setPen(pen(qcolor(colours.grid), hair_px));
    for (const plot::Tick& tick : layout.y_ticks)
        if (const auto y = layout.y.px(tick.at); y && layout.y.kind() != plot::AxisKind::category)
            painter.drawLine(QPointF(area.left(), *y), QPointF(area.right(), *y));
    for (const plot::Tick& tick : layout.x_ticks)
        if (const auto x = layout.x.px(tick.at); x && layout.x.kind() != plot::AxisKind::category)
            painter.drawLine(QPointF(*x, area.top()), QPointF(*x, area.bottom()));
    painter.setPen(pen(qcolor(colours.frame), hair_px));
    painter.drawLine(area.bottomLeft(), area.bottomRight());
    for (const plot::Tick& tick : layout.x_ticks)
        if (const auto x = layout.x.px(tick.at); x && !tick.label.empty())
            painter.drawLine(QPointF(*x, area.bottom()), QPointF(*x, area.bottom() + 4));
}

void paint_rules(QPainter& painter, const plot::Layout& layout, const std::vector<plot::Rule>& rules,
                 Theme theme) {
    const QRectF area = qrect(layout.area);
    for (const plot::Rule& rule : rules) {
        const plot::Scale& scale = rule.vertical ? layout.x : layout.y;
        if (!scale.shows(rule.at)) continue;
        const double at = scale.px(rule.at).value_or(0);
        painter.setPen(pen(qcolor(rule.tone, theme), line_px * 0.75, rule.stroke));
        if (rule.vertical)
            painter.drawLine(QPointF(at, area.top()), QPointF(at, area.bottom()));
        else
            painter.drawLine(QPointF(area.left(), at), QPointF(area.right(), at));
    }
}

void paint_hatched(QPainter& painter, const QRectF& box, plot::Tone tone, Theme theme) {
    const QColor paper = qcolor(plot::surface(background(theme)).paper);
    painter.save();
    painter.setClipRect(box, Qt::IntersectClip);
    painter.strokePath(hatch_path(plot::hatch(tone), box), pen(paper, 1.25));
    painter.restore();
    painter.strokePath(
        [&] {
            QPainterPath outline;
            outline.addRect(box);
            return outline;
        }(),
        pen(paper, hair_px));
}

} // namespace

QRectF qrect(const plot::Box& box) { return {box.left, box.top, box.width, box.height}; }

Ground::Ground(plot::Layout layout, std::vector<plot::Rule> rules, Theme theme, QGraphicsItem* parent)
    : QGraphicsItem(parent)
    , layout_(std::move(layout))
    , rules_(std::move(rules))
    , theme_(theme) {}

QRectF Ground::boundingRect() const { return whole(layout_); }

void Ground::paint(QPainter* painter, const QStyleOptionGraphicsItem*, QWidget*) {
    paint_bands(*painter, layout_, theme_);
    paint_grid(*painter, layout_, theme_);
    paint_band_edges(*painter, layout_, theme_);
    paint_rules(*painter, layout_, rules_, theme_);
}

Front::Front(plot::Layout layout, Theme theme, QGraphicsItem* parent)
    : QGraphicsItem(parent)
    , layout_(std::move(layout))
    , theme_(theme) {
    for (const plot::SpanBox& span : layout_.spans)
        new SpanItem(span, theme, this);
}

QRectF Front::boundingRect() const { return whole(layout_); }

void Front::paint_key(QPainter& painter, const plot::Key& key) const {
    const QRectF box = qrect(key.box);
    const QColor colour = qcolor(key.tone, theme_);
    const plot::Surface surface = plot::surface(background(theme_));
    const QRectF swatch(box.left(), box.center().y() - 5, box.width(), 10);
    switch (key.shape) {
    case plot::Key::Shape::area:
        painter.setPen(pen(colour, hair_px));
        painter.setBrush(qcolor(plot::ribbon_fill(key.tone, background(theme_))));
        painter.drawRect(swatch);
        break;
    case plot::Key::Shape::bar:
        painter.fillRect(swatch, colour);
        paint_hatched(painter, swatch, key.tone, theme_);
        break;
    case plot::Key::Shape::line:
        painter.setPen(pen(colour, line_px, key.stroke));
        if (key.stroke != plot::Stroke::none)
            painter.drawLine(QPointF(box.left(), box.center().y()), QPointF(box.right(), box.center().y()));
        painter.fillPath(mark_path(key.mark, box.center(), plot::mark_px), colour);
        break;
    case plot::Key::Shape::hollow:
        painter.fillPath(mark_path(key.mark, box.center(), plot::hollow_px), qcolor(surface.text));
        painter.fillPath(mark_path(key.mark, box.center(), plot::hole_px), qcolor(surface.paper));
        break;
    case plot::Key::Shape::mark:
        painter.fillPath(mark_path(key.mark, box.center(), plot::mark_px), colour);
        break;
    }
}

void Front::paint(QPainter* painter, const QStyleOptionGraphicsItem*, QWidget*) {
    for (const plot::BarBox& bar : layout_.bars)
        paint_hatched(*painter, qrect(bar.box), bar.tone, theme_);
    for (const plot::Key& key : layout_.keys)
        paint_key(*painter, key);
    for (const plot::Leader& leader : layout_.leaders) {
        painter->setPen(pen(qcolor(leader.tone, theme_), hair_px));
        painter->drawLine(QPointF(leader.from_x, leader.from_y), QPointF(leader.to_x, leader.to_y));
    }
}

SpanItem::SpanItem(const plot::SpanBox& span, Theme theme, QGraphicsItem* parent)
    : QGraphicsItem(parent)
    , span_(span)
    , theme_(theme) {}

QRectF SpanItem::boundingRect() const {
    const QRectF mark(span_.middle - span_mark_px / 2, span_.box.centre() - span_mark_px / 2, span_mark_px,
                      span_mark_px);
    constexpr double arrow_px = 16;
    return qrect(span_.box).united(mark).adjusted(span_.before ? -arrow_px : -1, -1, 1, 1);
}

void SpanItem::paint(QPainter* painter, const QStyleOptionGraphicsItem*, QWidget*) {
    const plot::Background ground = background(theme_);
    const QRectF box = qrect(span_.box);
    painter->setPen(pen(qcolor(span_.tone, theme_), 1.25));
    painter->setBrush(qcolor(plot::ribbon_fill(span_.tone, ground)));
    if (box.width() > 0) painter->drawRect(box);
    if (span_.before) {
        QPolygonF arrow;
        for (const auto& [x, y] : span_.arrow())
            arrow << QPointF(x, y);
        painter->setPen(pen(qcolor(span_.tone, theme_), line_px));
        painter->drawPolyline(arrow);
    }
    painter->setPen(pen(qcolor(plot::surface(ground).paper), hair_px));
    painter->setBrush(qcolor(span_.tone, theme_));
    painter->drawPath(mark_path(plot::mark(span_.tone), {span_.middle, box.center().y()}, span_mark_px));
}

void add_words(const plot::Layout& layout, Theme theme, QGraphicsItem* parent) {
    const plot::Surface surface = plot::surface(background(theme));
    for (const plot::Label& label : layout.labels) {
        auto* item = new QGraphicsSimpleTextItem(QString::fromStdString(label.text), parent);
        const QFont face = font(label.font_px, label.bold);
        const QFontMetricsF metrics(face);
        const double width = metrics.horizontalAdvance(item->text());
        const double share = label.anchor == plot::Anchor::start ? 0
                             : label.anchor == plot::Anchor::end ? 1
                                                                 : 0.5;
        const bool soft = label.role == plot::Role::x_tick || label.role == plot::Role::y_tick ||
                          label.role == plot::Role::axis_title;
        item->setFont(face);
        item->setBrush(qcolor(soft ? surface.soft_text : surface.text));
        item->setPos(label.x() - share * width, label.baseline() - metrics.ascent());
    }
}

} // namespace sumpbook::render
