// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/import/words.h"

#include "model/quantity/utf8.h"

#include <algorithm>
#include <array>

namespace sumpbook::import {
namespace {

struct Folding {
    std::u32string_view letters;
    std::string_view plain;
};

constexpr auto foldings = std::to_array<Folding>({
    {U"\u00E0\u00E1\u00E2\u00E3\u00E4\u00E5\u00C0\u00C1\u00C2\u00C3\u00C4\u00C5", "a"},
    {U"\u00E7\u00C7", "c"},
    {U"\u00E8\u00E9\u00EA\u00EB\u00C8\u00C9\u00CA\u00CB", "e"},
    {U"\u00EC\u00ED\u00EE\u00EF\u00CC\u00CD\u00CE\u00CF", "i"},
    {U"\u0142\u0141", "l"},
    {U"\u00F1\u00D1", "n"},
    {U"\u00F2\u00F3\u00F4\u00F5\u00F6\u00F8\u00D2\u00D3\u00D4\u00D5\u00D6\u00D8", "o"},
    {U"\u00F9\u00FA\u00FB\u00FC\u00D9\u00DA\u00DB\u00DC", "u"},
    {U"\u00FD\u00FF\u00DD", "y"},
    {U"\u00E6\u00C6", "ae"},
    {U"\u0153\u0152", "oe"},
    {U"\u00DF", "ss"},
    {U"\u00B2", "2"},
});

/// Signs that stay, each a word of its own: / % ? $ the pound, yen, euro and rupee signs, check marks.
constexpr std::u32string_view signs = U"/%?$\u00A3\u00A5\u20AC\u20B9\u2713\u2714";

std::string folded(char32_t c) {
    if (c >= U'A' && c <= U'Z') return {static_cast<char>(c - U'A' + U'a')};
    if ((c >= U'a' && c <= U'z') || (c >= U'0' && c <= U'9')) return {static_cast<char>(c)};
    for (const auto& [letters, plain] : foldings)
        if (letters.find(c) != std::u32string_view::npos) return std::string(plain);
    return {};
}

bool is_blank(char32_t c) {
    return c == U' ' || c == U'\t' || c == U'\n' || c == U'\r' || c == U'\u00A0' || c == U'\u2009' ||
           c == U'\u202F';
}

/// Writing systems beyond the table keep their letters, so that two such headings stay different.
bool is_far_letter(char32_t c) { return c >= 0x0180 && !(c >= 0x2000 && c <= 0x2BFF) && c != 0xFFFD; }

} // namespace

std::string_view trimmed(std::string_view text) {
    while (!text.empty() && is_blank(utf8_first(text).code_point))
        text.remove_prefix(utf8_first(text).bytes);
    std::size_t used = 0;
    for (std::size_t at = 0; at < text.size();) {
        const auto [code_point, bytes] = utf8_first(text.substr(at));
        at += bytes;
        if (!is_blank(code_point)) used = at;
    }
    return text.substr(0, used);
}

std::string plain_words(std::string_view text) {
    std::string out;
    bool gap = false;
    const auto put = [&](std::string_view letters) {
        if (gap && !out.empty()) out += ' ';
        gap = false;
        out += letters;
    };
    while (!text.empty()) {
        const auto [c, bytes] = utf8_first(text);
        const bool sign = signs.find(c) != std::u32string_view::npos;
        if (sign) {
            gap = true;
            put(text.substr(0, bytes));
            gap = true;
        } else if (is_far_letter(c)) {
            put(text.substr(0, bytes));
        } else if (const std::string letters = folded(c); !letters.empty()) {
            put(letters);
        } else if (c != U'\'' && c != U'\u2019') {
            gap = true;
        }
        text.remove_prefix(bytes);
    }
    return out;
}

std::vector<std::string> pieces_of(std::string_view text, char mark) {
    std::vector<std::string> pieces;
    while (true) {
        const std::size_t end = std::min(text.find(mark), text.size());
        if (const auto piece = trimmed(text.substr(0, end)); !piece.empty()) pieces.emplace_back(piece);
        if (end == text.size()) return pieces;
        text.remove_prefix(end + 1);
    }
}

std::string listed(const std::vector<std::string>& things) {
    std::string out;
    for (std::size_t i = 0; i < things.size(); ++i)
        out += (i == 0 ? "" : i + 1 == things.size() ? " and " : ", ") + things[i];
    return out;
}

} // namespace sumpbook::import
