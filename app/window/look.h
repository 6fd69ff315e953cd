// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "reports/document/document.h"
#include "reports/render/theme.h"

#include <QColor>
#include <QPalette>
#include <QString>

#include <string_view>

class QWidget;

namespace sumpbook::window {

/// Text of ours or of the owner as the window shows it: control characters and direction marks are replaced,
/// numbers stand as they were composed, whatever the locale.
[[nodiscard]] QString shown(std::string_view text);

/// Light or dark, by which of text and ground is the lighter.
[[nodiscard]] render::Theme theme_of(const QPalette& palette);

/// The palette of a picture asked for by name.
[[nodiscard]] QPalette palette_of(render::Theme theme);

/// Text that matters less, at least 4.5:1 as well.
[[nodiscard]] QColor soft_text(render::Theme theme);

/// The colour of text that says how much something matters; nothing for `none`. At least 4.5:1 against the
/// ground of the theme (WCAG 2.2, 1.4.3). DESIGN: red, yellow and green of ISO 22324 as near to the
/// Okabe-Ito hues as that contrast allows.
[[nodiscard]] QColor text_colour(document::Severity severity, render::Theme theme);

/// The mark that says the same as the colour: ■ danger, ▲ caution, ● good; empty for `none`.
[[nodiscard]] std::string_view mark_of(document::Severity severity);

/// What a text says that begins with one of these marks; `none` for any other.
[[nodiscard]] document::Severity severity_of(std::string_view marked_text);

/// The text of a cell with its mark before it, unless it stands there already.
[[nodiscard]] QString marked(std::string_view text, document::Severity severity);

/// A blank that does not break before and after: air beside the text of a cell.
[[nodiscard]] QString with_air(const QString& text);

/// The ratio of two colours' luminance (WCAG 2.2, "contrast ratio"), 1 to 21.
[[nodiscard]] double contrast_ratio(const QColor& one, const QColor& other);

} // namespace sumpbook::window
