// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/look.h"

#include "reports/plot/palette.h"
#include "reports/write/text.h"

namespace sumpbook::window {

using document::Severity;
using render::Theme;

namespace {

plot::Rgb rgb_of(const QColor& colour) {
    return {static_cast<std::uint8_t>(colour.red()), static_cast<std::uint8_t>(colour.green()),
            static_cast<std::uint8_t>(colour.blue())};
}

struct Grounds {
    QRgb window, alternate, button, highlight;
};

constexpr Grounds light{0xFFF4F4F1, 0xFFF7F7F5, 0xFFE9E9E5, 0xFF005387};
constexpr Grounds dark{0xFF272C32, 0xFF22272C, 0xFF323941, 0xFF2F6F9F};

} // namespace

QString shown(std::string_view text) { return QString::fromStdString(write::printable(text)); }

Theme theme_of(const QPalette& palette) {
    const bool text_is_lighter = plot::relative_luminance(rgb_of(palette.color(QPalette::WindowText))) >
                                 plot::relative_luminance(rgb_of(palette.color(QPalette::Window)));
    return text_is_lighter ? Theme::dark : Theme::light;
}

QPalette palette_of(Theme theme) {
    const Grounds& ground = theme == Theme::dark ? dark : light;
    const auto surface = plot::surface(render::background(theme)); // charts and tables on the same paper
    const QColor text = render::qcolor(surface.text);
    const QColor soft = soft_text(theme);
    QPalette palette(QColor(ground.button), QColor(ground.window));
    for (const auto role :
         {QPalette::WindowText, QPalette::Text, QPalette::ButtonText, QPalette::ToolTipText}) {
        palette.setColor(role, text);
        palette.setColor(QPalette::Disabled, role, soft);
    }
    for (const auto role : {QPalette::Base, QPalette::ToolTipBase})
        palette.setColor(role, render::qcolor(surface.paper));
    palette.setColor(QPalette::AlternateBase, QColor(ground.alternate));
    palette.setColor(QPalette::PlaceholderText, soft);
    palette.setColor(QPalette::Highlight, QColor(ground.highlight));
    palette.setColor(QPalette::HighlightedText, Qt::white);
    return palette;
}

QColor soft_text(Theme theme) { return render::qcolor(plot::surface(render::background(theme)).soft_text); }

QColor text_colour(Severity severity, Theme theme) {
    const bool on_dark = theme == Theme::dark;
    switch (severity) {
    case Severity::danger:
        return on_dark ? QColor(0xFF, 0x8A, 0x65) : QColor(0xA6, 0x2E, 0x00);
    case Severity::caution:
        return on_dark ? QColor(0xF0, 0xC2, 0x3C) : QColor(0x7A, 0x55, 0x00);
    case Severity::good:
        return on_dark ? QColor(0x3F, 0xC9, 0x9B) : QColor(0x00, 0x6B, 0x4E);
    case Severity::none:
        break;
    }
    return {};
}

std::string_view mark_of(Severity severity) {
    switch (severity) {
    case Severity::danger:
        return "■";
    case Severity::caution:
        return "▲";
    case Severity::good:
        return "●";
    case Severity::none:
        break;
    }
    return {};
}

Severity severity_of(std::string_view marked_text) {
    for (const auto severity : {Severity::danger, Severity::caution, Severity::good}) {
        if (marked_text.starts_with(mark_of(severity))) return severity;
    }
    return Severity::none;
}

QString marked(std::string_view text, Severity severity) {
    const auto mark = mark_of(severity);
    if (mark.empty() || text.empty() || text.starts_with(mark)) return shown(text);
    return shown(std::string(mark) + " " + std::string(text));
}

QString with_air(const QString& text) { return QChar::Nbsp + text + QChar::Nbsp; }

double contrast_ratio(const QColor& one, const QColor& other) {
    return plot::contrast_ratio(rgb_of(one), rgb_of(other));
}

} // namespace sumpbook::window
