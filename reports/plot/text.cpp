// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/plot/text.h"

#include "model/quantity/decimal.h"
#include "model/quantity/utf8.h"

#include <array>

namespace sumpbook::plot {

namespace {

constexpr std::string_view ellipsis = "\u2026";
constexpr double bold_factor = 1.17; // DejaVu Sans Bold against the plain face, at most, over Latin words

/// Advance widths of DejaVu Sans in em, rounded up, by classes.
struct WidthClass {
    std::string_view letters;
    double em;
};
constexpr std::array<WidthClass, 8> width_classes{{
    {"ijl'I|", 0.34},
    {" .,:;!()[]{}/\\-ft", 0.40},
    {"r\"*", 0.50},
    {"sczkJ?_", 0.59},
    {"mM%W@w&", 1.01},
    {"ABCDEFGHKNOPQRSTUVXYZ", 0.79},
    {"0123456789abdeghnopquvxyL$", 0.64},
    {"+<>=~^#", 0.84},
}};
constexpr double other_letter_em = 0.86; // accented Latin, Greek, Cyrillic
constexpr double full_em = 1.05;
constexpr char32_t end_of_alphabets = 0x0590;

double em_of(char32_t letter) {
    if (letter < 0x80) {
        for (const WidthClass& widths : width_classes)
            if (widths.letters.find(static_cast<char>(letter)) != std::string_view::npos) return widths.em;
        return other_letter_em;
    }
    return letter < end_of_alphabets ? other_letter_em : full_em;
}

/// The longest beginning of whole letters that is no wider than `width_px`.
std::string_view beginning(std::string_view utf8, double width_px, double font_px, bool bold) {
    const double scale = font_px * (bold ? bold_factor : 1);
    double width = 0;
    std::size_t taken = 0;
    while (taken < utf8.size()) {
        const Utf8First first = utf8_first(utf8.substr(taken));
        width += em_of(first.code_point) * scale;
        if (width > width_px) break;
        taken += first.bytes;
    }
    return utf8.substr(0, taken);
}

std::string_view without_blanks_behind(std::string_view text) {
    return text.substr(0, text.find_last_not_of(' ') + 1);
}

} // namespace

double text_width(std::string_view utf8, double font_px, bool bold) {
    double em = 0;
    for (std::size_t at = 0; at < utf8.size();) {
        const Utf8First first = utf8_first(utf8.substr(at));
        em += em_of(first.code_point);
        at += first.bytes;
    }
    return em * font_px * (bold ? bold_factor : 1);
}

std::string shortened(std::string_view utf8, double width_px, double font_px, bool bold) {
    if (text_width(utf8, font_px, bold) <= width_px) return std::string(utf8);
    const double room = width_px - text_width(ellipsis, font_px, bold);
    const std::string_view kept = without_blanks_behind(beginning(utf8, room, font_px, bold));
    return kept.empty() ? std::string() : std::string(kept) + std::string(ellipsis);
}

std::vector<std::string> wrapped(std::string_view utf8, double width_px, double font_px, std::size_t lines,
                                 bool bold) {
    std::vector<std::string> result;
    while (!utf8.empty() && result.size() + 1 < lines && text_width(utf8, font_px, bold) > width_px) {
        std::string_view line = beginning(utf8, width_px, font_px, bold);
        const bool word_ends = line.size() < utf8.size() && utf8[line.size()] == ' ';
        const std::size_t blank = line.find_last_of(' ');
        if (!word_ends && blank != std::string_view::npos) line = line.substr(0, blank);
        if (line.empty()) break;
        result.emplace_back(without_blanks_behind(line));
        utf8.remove_prefix(line.size());
        utf8.remove_prefix(std::min(utf8.find_first_not_of(' '), utf8.size()));
    }
    if (std::string last = shortened(utf8, width_px, font_px, bold); !last.empty())
        result.push_back(std::move(last));
    return result;
}

std::string grouped_number(double number, int decimals) {
    std::string text = decimal_from_double(number, decimals).text();
    const std::size_t first_digit = text.front() == '-' ? 1 : 0;
    if (text.find_first_not_of("-0.") == std::string::npos) text.erase(0, first_digit); // no "-0"
    const std::size_t start = text.front() == '-' ? 1 : 0;
    std::size_t end = std::min(text.find('.'), text.size());
    while (end > start + 3) {
        end -= 3;
        text.insert(end, " ");
    }
    return text;
}

} // namespace sumpbook::plot
