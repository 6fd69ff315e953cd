// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/render/chart.h"

#include "reports/plot/layout.h"
#include "reports/render/chart_series.h"
#include "reports/render/painted_parts.h"

#include <QGraphicsLayout>
#include <QGraphicsSceneResizeEvent>
#include <QValueAxis>

namespace sumpbook::render {

namespace {

/// Over the plot area and the (hidden) grid of Qt Charts, under its series; and over all of them.
constexpr qreal behind_series = 1;
constexpr qreal before_series = 100;

class PlotChart : public QChart {
public:
    PlotChart(plot::Plot plot, Theme theme)
        : plot_(std::move(plot))
        , theme_(theme)
        , across_(new QValueAxis)
        , up_(new QValueAxis) {
        setAnimationOptions(QChart::NoAnimation);
        setBackgroundRoundness(0);
        setBackgroundPen(Qt::NoPen);
        setBackgroundBrush(qcolor(plot::surface(background(theme)).paper));
        setMargins({});
        layout()->setContentsMargins(0, 0, 0, 0);
        legend()->hide();
        for (QValueAxis* axis : {across_, up_})
            axis->setVisible(false);
        addAxis(across_, Qt::AlignBottom);
        addAxis(up_, Qt::AlignLeft);
    }

    /// Everything anew: which marks fit and where words go depends on the size.
    void rebuild() {
        const plot::Layout layout = plot::lay_out(plot_, {size().width(), size().height()});
        removeAllSeries();
        qDeleteAll(own_parts_);
        setPlotArea(qrect(layout.area));
        set_range(*across_, layout.x, layout.area.left, layout.area.right());
        set_range(*up_, layout.y, layout.area.bottom(), layout.area.top);
        add_series(*this, *across_, *up_, plot_, layout, theme_);
        auto* const ground = new Ground(layout, plot_.rules, theme_, this);
        auto* const front = new Front(layout, theme_, this);
        ground->setZValue(behind_series);
        front->setZValue(before_series);
        add_words(layout, theme_, front);
        own_parts_ = {ground, front};
    }

    [[nodiscard]] const plot::Plot& plot() const { return plot_; }

protected:
    void resizeEvent(QGraphicsSceneResizeEvent* event) override {
        QChart::resizeEvent(event);
        rebuild();
    }

private:
    static void set_range(QValueAxis& axis, const plot::Scale& scale, double start_px, double end_px) {
        const double start = scale.straight_at(start_px);
        const double end = scale.straight_at(end_px);
        axis.setReverse(end < start);
        axis.setRange(std::min(start, end), std::max(start, end));
    }

    plot::Plot plot_;
    Theme theme_;
    QValueAxis* across_;
    QValueAxis* up_;
    QList<QGraphicsItem*> own_parts_;
};

} // namespace

QChart* chart(const plot::Plot& plot, Theme theme, QSizeF size) {
    auto* result = new PlotChart(plot, theme);
    result->setObjectName("plot");
    result->resize(size);
    return result;
}

} // namespace sumpbook::render
