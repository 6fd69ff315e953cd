// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/figure_row.h"

#include "app/window/look.h"
#include "reports/plot/layout.h"
#include "reports/render/chart_widget.h"

#include <QSizePolicy>

#include <algorithm>

namespace sumpbook::window {
namespace {

constexpr int least_width_px = 430;
constexpr int gap_px = 12;
constexpr int least_height_px = 300; // the words of a legend take their share
constexpr int most_height_px = 1200;

/// What the picture shows, in words below it.
QLabel* caption_of(const plot::Plot& plot, QWidget* parent) {
    constexpr int beside_px = 8; // as the words of the picture
    auto* label = new QLabel(parent);
    label->setTextFormat(Qt::PlainText);
    label->setText(shown(plot.description));
    label->setWordWrap(true);
    label->setContentsMargins(beside_px, 0, beside_px, 0);
    label->setTextInteractionFlags(Qt::TextSelectableByMouse);
    QPalette palette = label->palette();
    for (const auto role : {QPalette::WindowText, QPalette::Text})
        palette.setColor(role, soft_text(theme_of(palette)));
    label->setPalette(palette);
    label->show();
    return label;
}

} // namespace

int wished_height_px(const plot::Plot& plot, int width, int room) {
    const auto good = static_cast<int>(plot::good_height(plot, width));
    if (plot.y.kind != plot::AxisKind::category) return std::clamp(good, least_height_px, most_height_px);
    const auto closest = static_cast<int>(plot::good_height(plot, width, plot::least_line_px));
    return std::clamp(room, closest, std::max(closest, good));
}

FigureRow::FigureRow(QWidget* parent)
    : QWidget(parent) {
    // Not Fixed: that would hold the row to the height of the width it had before it was laid out.
    QSizePolicy policy(QSizePolicy::Expanding, QSizePolicy::Minimum);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
}

void FigureRow::add(const plot::Plot& plot) {
    auto* chart = render::chart_widget(plot, theme_of(palette()));
    chart->setParent(this);
    chart->setToolTip(QString());
    charts_.push_back({chart, plot.spans.empty() ? caption_of(plot, this) : nullptr, plot});
    chart->show();
    updateGeometry();
}

void FigureRow::set_room(int height_px) {
    if (height_px == room_px_) return;
    room_px_ = height_px;
    updateGeometry();
    place();
}

int FigureRow::height_of(const Placed& placed, int width) const {
    const int caption = placed.caption == nullptr ? 0 : placed.caption->heightForWidth(width);
    return wished_height_px(placed.plot, width, room_px_) + caption;
}

int FigureRow::columns_in(int width) const {
    const bool fits_two = width >= 2 * least_width_px + gap_px;
    return charts_.size() > 1 && fits_two ? 2 : 1;
}

std::vector<QRect> FigureRow::places_in(int width) const {
    std::vector<QRect> places;
    const bool two = columns_in(width) == 2;
    int top = 0;
    for (std::size_t i = 0; i < charts_.size();) {
        // The last of an odd number has the row for itself.
        const bool alone = !two || i + 1 == charts_.size();
        const int each = alone ? width : (width - gap_px) / 2;
        int height = height_of(charts_[i], each);
        if (!alone) height = std::max(height, height_of(charts_[i + 1], each));
        places.emplace_back(0, top, each, height);
        if (!alone) places.emplace_back(each + gap_px, top, each, height);
        i += alone ? 1 : 2;
        top += height + gap_px;
    }
    return places;
}

int FigureRow::heightForWidth(int width) const {
    const auto places = places_in(width);
    return places.empty() ? 0 : places.back().bottom() + 1;
}

QSize FigureRow::sizeHint() const { return {2 * least_width_px + gap_px, heightForWidth(width())}; }

QSize FigureRow::minimumSizeHint() const { return {least_width_px / 2, heightForWidth(width())}; }

void FigureRow::resizeEvent(QResizeEvent* /*event*/) { place(); }

void FigureRow::place() {
    const auto places = places_in(width());
    for (std::size_t i = 0; i < places.size(); ++i) {
        const auto& [chart, caption, plot] = charts_[i];
        const int below = caption == nullptr ? 0 : caption->heightForWidth(places[i].width());
        chart->setGeometry(places[i].adjusted(0, 0, 0, -below));
        if (caption != nullptr) caption->setGeometry(places[i].adjusted(0, places[i].height() - below, 0, 0));
    }
}

} // namespace sumpbook::window
