// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/render/chart_series.h"

#include "reports/plot/mark_shape.h"
#include "reports/plot/palette.h"
#include "reports/plot/thin.h"
#include "reports/render/marks.h"

#include <QAreaSeries>
#include <QBarSet>
#include <QLineSeries>
#include <QScatterSeries>
#include <QStackedBarSeries>
#include <QValueAxis>

namespace sumpbook::render {

namespace {

/// Where series go: the chart with its axes.
struct Target {
    QChart& chart;
    QValueAxis& across;
    QValueAxis& up;
    const plot::Layout& layout;
    Theme theme;
    void add(QAbstractSeries* series) const {
        chart.addSeries(series);
        series->attachAxis(&across);
        series->attachAxis(&up);
    }
};

void add_ribbon(const Target& target, const plot::Ribbon& ribbon) {
    auto* upper = new QLineSeries;
    auto* lower = new QLineSeries;
    for (const plot::RibbonPoint& point : ribbon.points) {
        const auto x = target.layout.x.straight(point.x);
        const auto low = target.layout.y.straight(point.low);
        const auto high = target.layout.y.straight(point.high);
        if (!x || !low || !high) continue;
        lower->append(*x, *low);
        upper->append(*x, *high);
    }
    auto* area = new QAreaSeries(upper, lower);
    upper->setParent(area);
    lower->setParent(area);
    area->setName(QString::fromStdString(ribbon.label));
    area->setBrush(qcolor(plot::ribbon_fill(ribbon.tone, background(target.theme))));
    area->setPen(pen(qcolor(ribbon.tone, target.theme), 1));
    target.add(area);
}

void add_bars(const Target& target, const plot::Plot& plot) {
    if (plot.bars.empty()) return;
    auto* stack = new QStackedBarSeries;
    stack->setBarWidth(target.layout.bar_share);
    for (const plot::Bars& bars : plot.bars) {
        auto* set = new QBarSet(QString::fromStdString(bars.label));
        for (std::size_t i = 0; i < plot.x.categories.size(); ++i)
            *set << (i < bars.values.size() && bars.values[i] > 0 && std::isfinite(bars.values[i])
                         ? bars.values[i]
                         : 0.0);
        set->setBrush(qcolor(bars.tone, target.theme));
        set->setPen(Qt::NoPen);
        stack->append(set);
    }
    target.add(stack);
}

QList<QPointF> places(const Target& target, const std::vector<plot::Point>& points) {
    QList<QPointF> result;
    for (const plot::Point& point : points)
        result.append({*target.layout.x.straight(point.x), *target.layout.y.straight(point.y)});
    return result;
}

void add_line(const Target& target, const plot::Series& series, const std::vector<plot::Point>& run,
              double line_px) {
    auto* line = new QLineSeries;
    line->setName(QString::fromStdString(series.label));
    line->setPen(pen(qcolor(series.tone, target.theme), line_px, plot::stroke(series)));
    line->replace(places(target, run));
    target.add(line);
}

void add_marks(const Target& target, const plot::Series& series, const std::vector<plot::Point>& points,
               double across, const QColor& colour) {
    if (points.empty()) return;
    auto* marks = new QScatterSeries;
    marks->setName(QString::fromStdString(series.label));
    marks->setMarkerShape(marker_shape(plot::mark(series)));
    marks->setMarkerSize(across * plot::mark_share(plot::mark(series)));
    marks->setBrush(colour);
    marks->setPen(Qt::NoPen);
    marks->replace(places(target, points));
    target.add(marks);
}

} // namespace

void add_series(QChart& chart, QValueAxis& across, QValueAxis& up, const plot::Plot& plot,
                const plot::Layout& layout, Theme theme) {
    const Target target{chart, across, up, layout, theme};
    for (const plot::Ribbon& ribbon : plot.ribbons)
        add_ribbon(target, ribbon);
    add_bars(target, plot);
    for (const plot::Series& series : plot.series) {
        const plot::DrawnSeries drawn = plot::drawn(series, layout);
        for (const auto& line : drawn.lines)
            add_line(target, series, line, drawn.line_px);
        const QColor colour = qcolor(series.tone, theme);
        add_marks(target, series, drawn.marks, plot::mark_px, colour);
        add_marks(target, series, drawn.hollow_marks, plot::hollow_px, colour);
        add_marks(target, series, drawn.hollow_marks, plot::hole_px,
                  qcolor(plot::surface(background(theme)).paper));
    }
}

} // namespace sumpbook::render
