// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <string_view>

namespace sumpbook {

/// The first code point of a UTF-8 text and the bytes it takes. Bytes that are not UTF-8 (RFC 3629)
/// count as U+FFFD, one byte each, so that every text can be walked through.
struct Utf8First {
    char32_t code_point = 0;
    std::size_t bytes = 0; ///< 0 only for an empty text.
};
[[nodiscard]] Utf8First utf8_first(std::string_view text);

} // namespace sumpbook
