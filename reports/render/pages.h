// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "reports/document/document.h"
#include "reports/plot/qr_code.h"

#include <QTextDocument>

#include <optional>

namespace sumpbook::render {

/// Fills a document of Qt with a report: each block in order, figures as objects that draw themselves. Pages
/// are of size `page` in dots of which `dots_an_inch` make an inch; they are drawn one dot a pixel of the
/// device. (A document that is told its device would stretch margins by the desktop's resolution.) `code`
/// stands at the end, 40 mm wide.
void fill_pages(QTextDocument& pages, const document::Document& report, QSizeF page, double dots_an_inch,
                const std::optional<plot::QrCode>& code = std::nullopt);

} // namespace sumpbook::render
