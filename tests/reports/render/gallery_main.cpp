// SPDX-License-Identifier: GPL-3.0-or-later
// Draws the gallery to look at: render_gallery FOLDER writes every picture at one and two pixels a pixel, on
// light and dark, and in grey, and report.pdf.
#include "reports/plot/layout.h"
#include "reports/render/image.h"
#include "reports/render/pdf.h"
#include "tests/reports/render/gallery.h"

#include <QApplication>
#include <QDir>
#include <QFile>

#include <cstdlib>

int main(int argc, char* argv[]) {
    using namespace sumpbook;
    setenv("QT_QPA_PLATFORM", "offscreen", 0);
    const QApplication app(argc, argv);
    if (argc != 2) return EXIT_FAILURE;
    const QDir folder(argv[1]);
    constexpr int width = 720;
    for (const auto& [name, picture] : gallery::pictures()) {
        const QSize size(width, static_cast<int>(plot::good_height(picture, width)));
        for (const int scale : {1, 2})
            for (const auto theme : {render::Theme::light, render::Theme::dark}) {
                const QString look = theme == render::Theme::dark ? "dark" : "light";
                const QImage image = render::image(picture, size, scale, theme);
                const QString file = QString("%1-%2-%3").arg(QString::fromStdString(name), look).arg(scale);
                if (!image.save(folder.filePath(file + ".png"))) return EXIT_FAILURE;
                if (scale == 2 && !image.convertToFormat(QImage::Format_Grayscale8)
                                       .save(folder.filePath(file + "-grey.png")))
                    return EXIT_FAILURE;
            }
    }
    QFile file(folder.filePath("report.pdf"));
    const QByteArray bytes = render::pdf(gallery::report(), "Oil report of the example bike");
    return file.open(QIODevice::WriteOnly) && file.write(bytes) == bytes.size() ? EXIT_SUCCESS : EXIT_FAILURE;
}
