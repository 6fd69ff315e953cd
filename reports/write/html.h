// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "reports/document/document.h"
#include "reports/plot/qr_code.h"

#include <optional>
#include <string>

namespace sumpbook::write {

/// A document as one HTML file that needs nothing else: style and pictures stand in it, no script, nothing
/// is fetched (a Content-Security-Policy forbids it). Well-formed as XML too. Its title is the first heading.
/// Everything in the document is text: no part of it is read as markup. Severity shows as a mark and a word
/// beside the colour; wide tables scroll; sections keep together on paper.
/// `code` stands at its end, under a line that says what it holds.
[[nodiscard]] std::string html(const document::Document& document,
                               const std::optional<plot::QrCode>& code = std::nullopt);

} // namespace sumpbook::write
