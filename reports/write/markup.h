// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <string_view>

namespace sumpbook::write {

/// Any text as character data or attribute value of HTML and of XML 1.0: & < > " ' as entities; control
/// characters, direction marks and overrides, characters XML does not allow and bytes that are not UTF-8 as
/// U+FFFD, so that they are seen and do nothing; line breaks and tabs as blanks.
[[nodiscard]] std::string markup(std::string_view text);

} // namespace sumpbook::write
