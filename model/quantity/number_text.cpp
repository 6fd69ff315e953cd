// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/quantity/number_text.h"

#include "model/quantity/utf8.h"

#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <string>

namespace sumpbook {
namespace {

/// Blanks and apostrophes that group thousands in print are each one kind, whichever code point it is.
enum class Piece { digit, point, comma, blank, apostrophe, minus, other };

Piece piece_of(char32_t c) {
    if (c >= U'0' && c <= U'9') return Piece::digit;
    switch (c) {
    case U'.':
        return Piece::point;
    case U',':
        return Piece::comma;
    case U' ':
    case U'\t':
    case U'\u00A0':
    case U'\u2009':
    case U'\u202F':
        return Piece::blank;
    case U'\'':
    case U'\u2019':
        return Piece::apostrophe;
    case U'-':
    case U'\u2212':
        return Piece::minus;
    default:
        return Piece::other;
    }
}

Place place_of(std::string_view text) {
    return {.file = {}, .line = {}, .column = {}, .text = std::string(text)};
}

std::string_view without_outer_blanks(std::string_view text) {
    while (!text.empty() && piece_of(utf8_first(text).code_point) == Piece::blank) {
        text.remove_prefix(utf8_first(text).bytes);
    }
    std::size_t used = 0;
    for (std::size_t at = 0; at < text.size();) {
        const auto [code_point, bytes] = utf8_first(text.substr(at));
        at += bytes;
        if (piece_of(code_point) != Piece::blank) used = at;
    }
    return text.substr(0, used);
}

/// A number taken apart: its sign, and its digits and marks with every mark as one of ". , blank '".
struct Marked {
    bool negative = false;
    std::string body;
    bool has_digit = false;
};

Result<Marked> take_apart(std::string_view text) {
    Marked marked;
    std::string_view rest = without_outer_blanks(text);
    if (rest.empty()) return refuse("A number is missing here.", place_of(text));
    if (const auto first = utf8_first(rest); piece_of(first.code_point) == Piece::minus) {
        marked.negative = true;
        rest.remove_prefix(first.bytes);
    }
    while (!rest.empty()) {
        const auto [code_point, bytes] = utf8_first(rest);
        switch (piece_of(code_point)) {
        case Piece::digit:
            marked.has_digit = true;
            [[fallthrough]];
        case Piece::point:
        case Piece::comma:
            marked.body += rest.front();
            break;
        case Piece::blank:
            marked.body += ' ';
            break;
        case Piece::apostrophe:
            marked.body += '\'';
            break;
        case Piece::minus:
        case Piece::other:
            return refuse(fmt::format("\"{}\" does not belong in a number.", rest.substr(0, bytes)),
                          place_of(text));
        }
        rest.remove_prefix(bytes);
    }
    if (!marked.has_digit) return refuse("There is no digit in this number.", place_of(text));
    return marked;
}

bool all_digits(std::string_view text) {
    return std::all_of(text.begin(), text.end(), [](char c) { return c >= '0' && c <= '9'; });
}

/// "12", "1 234", "1.234.567": digits, or groups of three behind one to three, all with the same mark
/// and not beginning with 0. The digits alone, or nothing.
std::optional<std::string> ungrouped(std::string_view whole) {
    if (all_digits(whole)) return std::string(whole);
    const std::size_t first_mark = whole.find_first_not_of("0123456789");
    const char mark = whole[first_mark];
    if (first_mark < 1 || first_mark > 3 || whole.front() == '0') return std::nullopt;
    std::string digits(whole.substr(0, first_mark));
    for (std::string_view rest = whole.substr(first_mark); !rest.empty(); rest.remove_prefix(4)) {
        if (rest.size() < 4 || rest.front() != mark || !all_digits(rest.substr(1, 3))) return std::nullopt;
        digits += rest.substr(1, 3);
    }
    return digits;
}

/// The plain form of the number if `decimal_mark` is what stands before its decimals, or nothing.
std::optional<std::string> plain_form(const Marked& marked, char decimal_mark) {
    const std::string_view body = marked.body;
    const std::size_t at = body.find(decimal_mark);
    const auto whole = ungrouped(body.substr(0, at));
    if (!whole) return std::nullopt;
    std::string plain = (marked.negative ? "-" : "") + *whole;
    if (at == std::string_view::npos) return plain;
    const std::string_view decimals = body.substr(at + 1);
    if (decimals.empty() || !all_digits(decimals)) return std::nullopt;
    return plain.append(".").append(decimals);
}

struct Readings {
    std::optional<std::string> with_point;
    std::optional<std::string> with_comma;
    [[nodiscard]] bool differ() const { return with_point && with_comma && *with_point != *with_comma; }
};

Readings readings_of(const Marked& marked) { return {plain_form(marked, '.'), plain_form(marked, ',')}; }

Problem ambiguous(std::string_view text, const Readings& readings) {
    const bool point_is_whole = readings.with_point->find('.') == std::string::npos;
    const std::string& whole = point_is_whole ? *readings.with_point : *readings.with_comma;
    const std::string& broken = point_is_whole ? *readings.with_comma : *readings.with_point;
    return {ProblemKind::refused,
            fmt::format("{0} can be read as {1} or as {2}; write {1} for the first or {2}0 for the second.",
                        without_outer_blanks(text), whole, broken),
            place_of(text)};
}

Problem marks_misplaced(std::string_view text, const Marked& marked, DecimalMark mark) {
    std::string sentence;
    if (marked.body.find_last_of("0123456789") + 1 != marked.body.size()) {
        sentence = "A digit is missing after the last mark of this number.";
    } else if (mark == DecimalMark::unknown) {
        sentence =
            "The marks in this number stand in the wrong places: thousands are grouped by three digits with "
            "one kind of mark, and the decimals come last.";
    } else {
        const bool point = mark == DecimalMark::point;
        sentence =
            fmt::format("Here decimals stand after a {}; a {}, a blank or an apostrophe can only group "
                        "thousands, by three digits.",
                        point ? "point" : "comma", point ? "comma" : "point");
    }
    return {ProblemKind::refused, std::move(sentence), place_of(text)};
}

Result<Decimal> exact(const std::string& plain, std::string_view text) {
    return Decimal::parse(plain).map_error([&](Problem problem) {
        problem.place.text = std::string(text);
        return problem;
    });
}

} // namespace

Result<Decimal> read_number(std::string_view text, DecimalMark mark) {
    const auto marked = take_apart(text);
    if (!marked) return pass_on(marked.error());
    Readings readings = readings_of(*marked);
    if (mark == DecimalMark::point) readings.with_comma.reset();
    if (mark == DecimalMark::comma) readings.with_point.reset();
    if (readings.differ()) return pass_on(ambiguous(text, readings));
    if (readings.with_point) return exact(*readings.with_point, text);
    if (readings.with_comma) return exact(*readings.with_comma, text);
    return pass_on(marks_misplaced(text, *marked, mark));
}

bool is_ambiguous_number(std::string_view text) {
    const auto marked = take_apart(text);
    return marked && readings_of(*marked).differ();
}

Result<NumberAndUnit> split_number_and_unit(std::string_view text, DecimalMark mark) {
    const std::string_view trimmed = without_outer_blanks(text);
    std::size_t length = 0;
    while (length < trimmed.size()) {
        const auto [code_point, bytes] = utf8_first(trimmed.substr(length));
        const Piece piece = piece_of(code_point);
        if (piece == Piece::other || (piece == Piece::minus && length > 0)) break;
        length += bytes;
    }
    if (length == 0) return refuse("A number is missing before the unit.", place_of(text));
    return read_number(trimmed.substr(0, length), mark).map([&](const Decimal& number) {
        return NumberAndUnit{number, trimmed.substr(length)};
    });
}

} // namespace sumpbook
