// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "reports/plot/plot.h"
#include "reports/render/theme.h"

#include <QByteArray>
#include <QImage>
#include <QSize>

namespace sumpbook::render {

/// A plot drawn `logical_size` large, each logical pixel `scale` pixels of the image (1 or more; the image
/// knows its ratio). The same plot gives the same pixels on one machine. Needs a QApplication; the platform
/// may be "offscreen". An empty size or a scale that is not above 0 gives a null image.
[[nodiscard]] QImage image(const plot::Plot& plot, QSize logical_size, qreal scale, Theme theme);

/// The image as PNG; empty where the image is null.
[[nodiscard]] QByteArray png(const plot::Plot& plot, QSize logical_size, qreal scale, Theme theme);

} // namespace sumpbook::render
