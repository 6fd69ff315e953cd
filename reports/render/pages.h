// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "reports/document/document.h"

#include <QTextDocument>

class QPaintDevice;

namespace sumpbook::render {

/// Fills a document of Qt with a report: each block in order, figures as objects that draw themselves. The
/// document is laid out for `device`, whose resolution it takes, on pages of `page`, in the device's pixels.
void fill_pages(QTextDocument& pages, const document::Document& report, QPaintDevice& device, QSizeF page);

} // namespace sumpbook::render
