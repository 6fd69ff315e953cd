// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace sumpbook::import {

/// The text without blanks at both ends; no-break blanks count.
[[nodiscard]] std::string_view trimmed(std::string_view text);

/// A heading or word reduced to what it says: lower case, accents and punctuation gone, one blank
/// between words; / % ? and currency signs stay as words of their own. "km-Stand" is "km stand",
/// "Öl/Filter" is "ol / filter". Never empty text for a comparison: text of marks alone gives "".
[[nodiscard]] std::string plain_words(std::string_view text);

/// The pieces between `mark`, trimmed; empty pieces are left out.
[[nodiscard]] std::vector<std::string> pieces_of(std::string_view text, char mark);

/// "a, b and c".
[[nodiscard]] std::string listed(const std::vector<std::string>& things);

} // namespace sumpbook::import
