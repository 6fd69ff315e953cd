// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/render/chart_widget.h"

#include "reports/plot/numbers.h"
#include "reports/render/chart.h"

#include <QChartView>

namespace sumpbook::render {

QWidget* chart_widget(const plot::Plot& plot, Theme theme) {
    constexpr QSizeF at_first{640, 360};
    auto* view = new QChartView(chart(plot, theme, at_first)); // given to the constructor, so that none leaks
    view->setRenderHint(QPainter::Antialiasing);
    view->setFrameShape(QFrame::NoFrame);
    view->setBackgroundBrush(qcolor(plot::surface(background(theme)).paper)); // else grey at the edges
    view->setBackgroundRole(QPalette::Base);
    view->setFocusPolicy(Qt::NoFocus);
    view->setAttribute(Qt::WA_TransparentForMouseEvents);
    view->setAccessibleName(QString::fromStdString(plot.title));
    view->setAccessibleDescription(QString::fromStdString(plot.description + " " + plot::numbers_text(plot)));
    return view;
}

} // namespace sumpbook::render
