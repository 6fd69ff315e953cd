// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "reports/document/document.h"
#include "reports/plot/qr_code.h"

#include <QByteArray>
#include <QString>

#include <optional>

namespace sumpbook::render {

/// A document as PDF: A4 pages, selectable text, figures as vector drawings on light paper, the title and
/// "page n of m" at the foot. Wide tables get smaller letters, then break their words; nothing is cut off.
/// Headings of tables are repeated on each page. Text is plain: nothing in it is read as markup. The file
/// says neither when nor where it was made, so that the same document gives the same bytes on one machine.
/// `code` stands at its end, over a line that says what it holds. Needs a QApplication.
[[nodiscard]] QByteArray pdf(const document::Document& document, const QString& title,
                             const std::optional<plot::QrCode>& code = std::nullopt);

} // namespace sumpbook::render
