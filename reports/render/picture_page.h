// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "reports/plot/plot.h"

#include <QByteArray>
#include <QSize>

namespace sumpbook::render {

/// A plot on a PDF page of its own, lines and text as such, a logical pixel 1/96 inch; always light. Its
/// title is the document's. An empty size gives no bytes. Needs a QApplication.
[[nodiscard]] QByteArray picture_page(const plot::Plot& plot, QSize logical_size);

} // namespace sumpbook::render
