// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/write/markup.h"

#include "model/quantity/utf8.h"

namespace sumpbook::write {
namespace {

constexpr std::string_view replacement = "\xEF\xBF\xBD";

/// Moves text about or stands for nothing: the direction marks and overrides, and the separators of lines
/// and paragraphs.
bool turns_text(char32_t c) {
    return c == 0x061C || c == 0x200E || c == 0x200F || (c >= 0x2028 && c <= 0x202E) ||
           (c >= 0x2066 && c <= 0x2069);
}

/// Not a control character and in `Char` of XML 1.0 (fifth edition, production 2).
bool is_allowed(char32_t c) { return c >= 0x20 && (c < 0x7F || c > 0x9F) && c != 0xFFFE && c != 0xFFFF; }

std::string_view entity_of(char32_t c) {
    switch (c) {
    case '&':
        return "&amp;";
    case '<':
        return "&lt;";
    case '>':
        return "&gt;";
    case '"':
        return "&quot;";
    case '\'':
        return "&#39;";
    default:
        return {};
    }
}

} // namespace

std::string markup(std::string_view text) {
    std::string out;
    while (!text.empty()) {
        const auto first = utf8_first(text);
        const auto entity = entity_of(first.code_point);
        if (!entity.empty()) {
            out += entity;
        } else if (first.code_point == '\n' || first.code_point == '\r' || first.code_point == '\t') {
            out += ' ';
        } else if (!is_allowed(first.code_point) || turns_text(first.code_point)) {
            out += replacement;
        } else if (first.code_point == 0xFFFD) {
            out += replacement; // one that was typed, or a byte that is not UTF-8
        } else {
            out += text.substr(0, first.bytes);
        }
        text.remove_prefix(first.bytes);
    }
    return out;
}

} // namespace sumpbook::write
