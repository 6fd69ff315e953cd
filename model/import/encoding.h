// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/quantity/problem.h"

#include <optional>
#include <string>
#include <string_view>

namespace sumpbook::import {

/// How the bytes of a file stand for characters. UTF-16 is known by its mark only.
enum class Encoding { utf8, utf8_with_mark, utf16_little, utf16_big, windows_1252 };

/// "UTF-8", "UTF-8 with a mark", "UTF-16 (little end first)", ...
[[nodiscard]] std::string_view name_of(Encoding encoding);
/// "utf-8", "utf-16" (big end first unless its mark says otherwise, RFC 2781 section 4.3), "utf-16le",
/// "utf-16be", "windows-1252", as an owner types them; anything else is refused.
/// "utf-16be", "windows-1252", as an owner types them; anything else is refused.
[[nodiscard]] Result<Encoding> read_encoding(std::string_view text);

/// The text of a file, always valid UTF-8 without a mark, and how it was found to be written.
struct DecodedText {
    std::string text;
    Encoding encoding = Encoding::utf8;
};

/// Files above this are refused before anything else is done with them. DESIGN: a lifetime of fuel
/// stops is under 1 MB.
inline constexpr std::size_t largest_file_bytes = 16U * 1024U * 1024U;

/// Bytes to text. A byte order mark decides (Unicode Standard, section 23.8); else valid UTF-8 is
/// UTF-8; else Windows-1252, unless the file also holds UTF-8 letters, since then one of the two must
/// be wrong. Nothing is replaced or dropped: a byte that stands for no character, half a UTF-16
/// character and NUL are refused with their line. `stated` skips the guess; between the two
/// orders of UTF-16 a mark still decides.
[[nodiscard]] Result<DecodedText> decode_text(std::string_view bytes, std::optional<Encoding> stated = {});

} // namespace sumpbook::import
