// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "reports/plot/layout.h"
#include "reports/render/theme.h"

#include <QGraphicsItem>

namespace sumpbook::render {

// The parts of a picture that Qt Charts does not draw, painted from a layout.

/// What lies behind the data: bands, grid, rules across and upright, axis lines.
class Ground : public QGraphicsItem {
public:
    Ground(plot::Layout layout, std::vector<plot::Rule> rules, Theme theme, QGraphicsItem* parent);
    [[nodiscard]] QRectF boundingRect() const override;
    void paint(QPainter* painter, const QStyleOptionGraphicsItem* option, QWidget* widget) override;

private:
    plot::Layout layout_;
    std::vector<plot::Rule> rules_;
    Theme theme_;
};

/// What lies over the data: hatches of bars, samples of the legend, leaders of words; spans are its children.
class Front : public QGraphicsItem {
public:
    Front(plot::Layout layout, Theme theme, QGraphicsItem* parent);
    [[nodiscard]] QRectF boundingRect() const override;
    void paint(QPainter* painter, const QStyleOptionGraphicsItem* option, QWidget* widget) override;

private:
    void paint_key(QPainter& painter, const plot::Key& key) const;

    plot::Layout layout_;
    Theme theme_;
};

/// A window along its line with the mark of its middle.
class SpanItem : public QGraphicsItem {
public:
    static constexpr int item_type = UserType + 1;
    SpanItem(const plot::SpanBox& span, Theme theme, QGraphicsItem* parent);
    [[nodiscard]] int type() const override { return item_type; }
    [[nodiscard]] QRectF boundingRect() const override;
    void paint(QPainter* painter, const QStyleOptionGraphicsItem* option, QWidget* widget) override;

private:
    plot::SpanBox span_;
    Theme theme_;
};

/// The words, one QGraphicsSimpleTextItem a label, children of `parent`.
void add_words(const plot::Layout& layout, Theme theme, QGraphicsItem* parent);

[[nodiscard]] QRectF qrect(const plot::Box& box);

} // namespace sumpbook::render
