// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/write/wrap.h"

#include <algorithm>
#include <array>
#include <utility>

namespace sumpbook::write {
namespace {

bool is_digit(char c) { return c >= '0' && c <= '9'; }
bool is_capital(char c) { return c >= 'A' && c <= 'Z'; }

/// Without the marks of a sentence around it: "(3" is "3", "km)." is "km".
std::string_view bare(std::string_view word) {
    constexpr std::string_view marks = ".,;:!?()\"";
    const auto from = word.find_first_not_of(marks);
    if (from == std::string_view::npos) return {};
    return word.substr(from, word.find_last_not_of(marks) - from + 1);
}

/// A number, a group of one, or one with a sign: "3", "-1", "456", "456.50", "0.10-0.15", "<2".
bool is_number(std::string_view word) {
    constexpr std::string_view parts = "0123456789.,-+<";
    return !word.empty() && is_digit(word.back()) && word.find_first_not_of(parts) == std::string_view::npos;
}

/// What may follow digits as the next group of the same number: "456", "456.50", "456,".
bool continues_number(std::string_view word) {
    if (word.size() < 3 || !std::all_of(word.begin(), word.begin() + 3, is_digit)) return false;
    return word.size() == 3 || !is_digit(word[3]);
}

/// A number that may have a group after it: no decimals, and nothing behind it.
bool may_be_continued(std::string_view word) {
    const auto number = bare(word);
    return is_number(number) && is_digit(word.back()) && number.find_first_of(".,") == std::string_view::npos;
}

bool is_unit(std::string_view word) {
    constexpr std::array<std::string_view, 36> units{
        "km", "mi", "L",   "mL",  "US",  "imp", "mm",   "cm",   "m",     "h",     "min",   "%",
        "N",  "Nm", "lbf", "kgf", "bar", "kPa", "psi",  "kg",   "g",     "mg/kg", "mm2/s", "mg",
        "C",  "V",  "A",   "kW",  "ppm", "mpg", "km/h", "km/L", "L/100", "L/1",   "1/min", "abs/cm"};
    if (std::ranges::find(units, word) != units.end()) return true;
    return word.size() == 3 && std::ranges::all_of(word, is_capital); // a currency of ISO 4217
}

/// Units written in two words.
bool is_second_half(std::string_view first, std::string_view second) {
    constexpr std::array<std::pair<std::string_view, std::string_view>, 13> pairs{{{"US", "gal"},
                                                                                   {"imp", "gal"},
                                                                                   {"US", "qt"},
                                                                                   {"US", "mpg"},
                                                                                   {"imp", "mpg"},
                                                                                   {"mpg", "US"},
                                                                                   {"mpg", "imp"},
                                                                                   {"N", "m"},
                                                                                   {"lbf", "ft"},
                                                                                   {"lbf", "in"},
                                                                                   {"kgf", "m"},
                                                                                   {"L/100", "km"},
                                                                                   {"L/1", "000"}}};
    return std::ranges::find(pairs, std::pair{first, second}) != pairs.end();
}

bool stay_together(std::string_view left, std::string_view right) {
    if (left.empty() || right.empty()) return false;
    if (may_be_continued(left) && continues_number(right)) return true;
    const auto unit = bare(right);
    if (is_number(bare(left)) && is_digit(left.back()) && is_unit(unit)) return true;
    return is_second_half(bare(left), unit);
}

/// Takes the words off the front of a text that must stay on one line.
std::string_view next_piece(std::string_view& text) {
    std::size_t end = text.find(' ');
    std::string_view last = text.substr(0, end);
    while (end != std::string_view::npos) {
        const std::size_t next_end = text.find(' ', end + 1);
        const auto next =
            text.substr(end + 1, next_end == std::string_view::npos ? next_end : next_end - end - 1);
        if (!stay_together(last, next)) break;
        last = next;
        end = next_end;
    }
    const auto piece = text.substr(0, end);
    text = end == std::string_view::npos ? std::string_view{} : text.substr(end + 1);
    return piece;
}

} // namespace

std::size_t columns_of(std::string_view text) {
    return static_cast<std::size_t>(
        std::ranges::count_if(text, [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; }));
}

std::string wrapped(std::string_view text, std::size_t width) {
    std::string out;
    std::size_t used = 0;
    while (!text.empty()) {
        const auto piece = next_piece(text);
        const std::size_t length = columns_of(piece);
        if (used != 0 && used + 1 + length > width) {
            out += '\n';
            used = 0;
        }
        if (used != 0) {
            out += ' ';
            ++used;
        }
        out += piece;
        used += length;
    }
    return out;
}

} // namespace sumpbook::write
