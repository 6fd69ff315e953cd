// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/render/theme.h"

namespace sumpbook::render {

plot::Background background(Theme theme) {
    return theme == Theme::dark ? plot::Background::dark : plot::Background::light;
}

QColor qcolor(plot::Rgb colour) { return {colour.red, colour.green, colour.blue}; }

QColor qcolor(plot::Tone tone, Theme theme) { return qcolor(plot::colour(tone, background(theme))); }

QFont font(double pixels, bool bold) {
    QFont face;
    face.setFamilies({"DejaVu Sans", "Noto Sans", "Liberation Sans", "Arial"});
    face.setStyleHint(QFont::SansSerif);
    face.setPixelSize(qRound(pixels));
    face.setBold(bold);
    face.setHintingPreference(QFont::PreferNoHinting);
    return face;
}

QPen pen(const QColor& colour, double width, plot::Stroke stroke) {
    constexpr double dash_px = 6;
    constexpr double dot_px = 2;
    constexpr double space_px = 4;
    if (stroke == plot::Stroke::none) return Qt::NoPen;
    QPen line(colour, width, Qt::SolidLine, Qt::FlatCap, Qt::RoundJoin);
    if (stroke != plot::Stroke::solid) {
        const double length = stroke == plot::Stroke::dashed ? dash_px : dot_px;
        line.setDashPattern({length / width, space_px / width});
    }
    return line;
}

} // namespace sumpbook::render
