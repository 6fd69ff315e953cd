// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/import/amount_text.h"

#include "model/import/words.h"
#include "model/quantity/utf8.h"

namespace sumpbook::import {
namespace {

bool is_digit(char32_t c) { return c >= U'0' && c <= U'9'; }
/// What may stand between digits: decimal and group marks of number_text.h.
bool is_mark(char32_t c) {
    constexpr std::u32string_view marks = U".,' \t\u00A0\u2009\u202F\u2019";
    return marks.find(c) != std::u32string_view::npos;
}

/// Bytes of a minus or a leading decimal mark that ends `before` and belongs to the number behind it: the
/// point of " .5" does, the one of "Fr.5" does not.
std::size_t sign_before(std::string_view before) {
    std::size_t taken = 0;
    if (before.ends_with('.') || before.ends_with(',')) {
        const auto rest = before.substr(0, before.size() - 1);
        if (!rest.empty() && !rest.ends_with(' ') && !rest.ends_with('-')) return 0;
        taken = 1;
        before = rest;
    }
    if (before.ends_with('-')) return taken + 1;
    constexpr std::string_view minus = "\u2212";
    return before.ends_with(minus) ? taken + minus.size() : taken;
}

} // namespace

AmountText take_amount_apart(std::string_view cell) {
    const std::string_view text = trimmed(cell);
    const std::size_t digit = text.find_first_of("0123456789");
    if (digit == std::string_view::npos) return {.before = text, .number = {}, .behind = {}};
    const std::size_t start = digit - sign_before(text.substr(0, digit));
    std::size_t end = digit;
    for (std::size_t at = digit; at < text.size();) {
        const auto [c, bytes] = utf8_first(text.substr(at));
        if (!is_digit(c) && !is_mark(c)) break;
        at += bytes;
        end = at;
    }
    return {.before = trimmed(text.substr(0, start)),
            .number = trimmed(text.substr(start, end - start)),
            .behind = trimmed(text.substr(end))};
}

std::string_view number_piece(std::string_view cell) { return take_amount_apart(cell).number; }

} // namespace sumpbook::import
