// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "reports/document/document.h"

#include <optional>
#include <string>
#include <string_view>

namespace sumpbook::write {

struct TextStyle {
    int width = 80;      ///< Columns of the terminal; sentences wrap here. At least 40.
    bool colour = false; ///< ANSI colours beside the words.
    /// Tables and facts wrap inside their cells to this; absent: they are as wide as they need.
    std::optional<int> table_width = {};
};

/// For people at a terminal, or in a file.
[[nodiscard]] std::string text(const document::Document& document, const TextStyle& style);

/// One record a line, fields separated by tabs, no headings, sentences left out: for cut and awk.
[[nodiscard]] std::string plain(const document::Document& document);

/// Text from outside made safe for a terminal: control characters, escape sequences and bidirectional
/// overrides become U+FFFD; line breaks and tabs become blanks.
[[nodiscard]] std::string printable(std::string_view text);

} // namespace sumpbook::write
