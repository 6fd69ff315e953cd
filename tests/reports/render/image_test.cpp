// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/render/image.h"

#include "reports/plot/text.h"
#include "tests/catch.h"
#include "tests/reports/render/gallery.h"

#include <QFontInfo>
#include <QFontMetricsF>

using namespace sumpbook;
using render::Theme;

TEST_CASE("An image is as large as asked and the same each time", "[window][image]") {
    const plot::Plot picture = gallery::pictures().front().second;
    const QImage image = render::image(picture, {640, 360}, 2, Theme::light);
    CHECK(image.size() == QSize(1280, 720));
    CHECK(render::png(picture, {640, 360}, 1, Theme::dark) ==
          render::png(picture, {640, 360}, 1, Theme::dark));
    CHECK(QImage::fromData(render::png(picture, {640, 360}, 1, Theme::dark)).size() == QSize(640, 360));
    CHECK(render::image(picture, {0, 360}, 1, Theme::light).isNull());
    CHECK(render::image(picture, {640, 360}, 0, Theme::light).isNull());
    CHECK(render::png(picture, {640, 0}, 1, Theme::light).isEmpty());
}

TEST_CASE("Corners have the colour of the paper", "[window][image]") {
    for (const auto& [name, picture] : gallery::pictures())
        for (const Theme theme : {Theme::light, Theme::dark}) {
            const QImage image = render::image(picture, {640, 360}, 1, theme);
            const QColor paper = render::qcolor(plot::surface(render::background(theme)).paper);
            CAPTURE(name);
            for (const QPoint corner : {QPoint(0, 0), QPoint(639, 0), QPoint(0, 359), QPoint(639, 359)})
                CHECK(image.pixelColor(corner) == paper);
        }
}

TEST_CASE("The estimate of a text's width is never too small, nor half as much again", "[window][text]") {
    if (!QFontInfo(render::font(12)).family().startsWith("DejaVu Sans"))
        WARN("DejaVu Sans is not installed; the widths are checked with another face");
    for (const char* text :
         {"Odometer, km", "trend limit 25 ppm", "48 210", "Mar 2026", "within", "act", "WMWM",
          "mm\u00B2/s at 100 \u00B0C", "Roadworthiness test", "\u03A3\u03B1\u03C6\u03AE\u03C2",
          "\u041C\u0430\u0441\u043B\u043E", "Illilli", "insurance", "ABCDEFGHIJKLMNOPQRSTUVWXYZ",
          "abcdefghijklmnopqrstuvwxyz", "0123456789", "!\"#$%&'()*+,-./:;<=>?@[]^_{|}~",
          "Chain cleaning and lubrication", "\u2026"})
        for (const bool bold : {false, true}) {
            const double real =
                QFontMetricsF(render::font(12, bold)).horizontalAdvance(QString::fromUtf8(text));
            CAPTURE(text, bold, real);
            CHECK(plot::text_width(text, 12, bold) >= real);
            CHECK(plot::text_width(text, 12, bold) <= 1.5 * real);
        }
}
