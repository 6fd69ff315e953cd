// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/render/chart_series.h"

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

constexpr double line_px = 2;

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
    area->setPen(Qt::NoPen);
    target.add(area);
}

void add_bars(const Target& target, const plot::Plot& plot) {
    if (plot.bars.empty()) return;
    auto* stack = new QStackedBarSeries;
    stack->setBarWidth(plot::bar_share);
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

void add_line(const Target& target, const plot::Series& series, const std::vector<plot::Point>& run) {
    auto* line = new QLineSeries;
    line->setName(QString::fromStdString(series.label));
    line->setPen(pen(qcolor(series.tone, target.theme), line_px, plot::stroke(series)));
    QList<QPointF> points;
    for (const plot::Point& point : run)
        points.append({*target.layout.x.straight(point.x), *target.layout.y.straight(point.y)});
    line->replace(points);
    target.add(line);
}

void add_marks(const Target& target, const plot::Series& series, const std::vector<plot::Point>& points,
               bool hollow) {
    if (points.empty()) return;
    constexpr double outline_px = 1.5;
    auto* marks = new QScatterSeries;
    const QColor colour = qcolor(series.tone, target.theme);
    const QColor paper = qcolor(plot::surface(background(target.theme)).paper);
    marks->setName(QString::fromStdString(series.label));
    marks->setMarkerShape(marker_shape(plot::mark(series)));
    marks->setMarkerSize(hollow ? plot::mark_px - outline_px + 1 : plot::mark_px);
    marks->setBrush(hollow ? paper : colour);
    marks->setPen(hollow ? pen(colour, outline_px) : QPen(Qt::NoPen));
    QList<QPointF> places;
    for (const plot::Point& point : points)
        places.append({*target.layout.x.straight(point.x), *target.layout.y.straight(point.y)});
    marks->replace(places);
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
            add_line(target, series, line);
        add_marks(target, series, drawn.marks, false);
        add_marks(target, series, drawn.hollow_marks, true);
    }
}

} // namespace sumpbook::render
