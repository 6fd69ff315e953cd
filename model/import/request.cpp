// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/import/request.h"

#include "model/import/words.h"

#include <fmt/format.h>

#include <array>

namespace sumpbook::import {
namespace {

template <class T>
struct Word {
    std::string_view word;
    T value;
};

constexpr auto kinds = std::to_array<Word<ImportKind>>({{"fuel", ImportKind::fuel},
                                                        {"work", ImportKind::work},
                                                        {"costs", ImportKind::costs},
                                                        {"readings", ImportKind::readings},
                                                        {"samples", ImportKind::samples}});
constexpr auto orders = std::to_array<Word<DateOrder>>({{"day-month-year", DateOrder::day_month_year},
                                                        {"month-day-year", DateOrder::month_day_year},
                                                        {"year-month-day", DateOrder::year_month_day},
                                                        {"dmy", DateOrder::day_month_year},
                                                        {"mdy", DateOrder::month_day_year},
                                                        {"ymd", DateOrder::year_month_day}});
constexpr auto marks = std::to_array<Word<DecimalMark>>({{"point", DecimalMark::point},
                                                         {"comma", DecimalMark::comma},
                                                         {".", DecimalMark::point},
                                                         {",", DecimalMark::comma}});
constexpr auto separators = std::to_array<Word<char>>({{"comma", ','},
                                                       {"semicolon", ';'},
                                                       {"tab", '\t'},
                                                       {"bar", '|'},
                                                       {",", ','},
                                                       {";", ';'},
                                                       {"\t", '\t'},
                                                       {"|", '|'}});

template <class T, std::size_t n>
Result<T> looked_up(const std::array<Word<T>, n>& words, std::string_view text, std::string_view choices) {
    for (const auto& [word, value] : words)
        if (word == text) return value;
    return fail(ProblemKind::wrong_usage, fmt::format("\"{}\" is not one of: {}.", text, choices));
}

template <class T, std::size_t n>
std::string_view first_word(const std::array<Word<T>, n>& words, T value) {
    for (const auto& [word, known] : words)
        if (known == value) return word;
    return "not known";
}

} // namespace

std::string_view name_of(ImportKind kind) { return first_word(kinds, kind); }
std::string_view name_of(DateOrder order) { return first_word(orders, order); }
std::string_view name_of(DecimalMark mark) { return first_word(marks, mark); }
std::string_view name_of_separator(char separator) { return first_word(separators, separator); }

Result<ImportKind> read_import_kind(std::string_view text) {
    return looked_up(kinds, text, "fuel, work, costs, readings, samples");
}
Result<DateOrder> read_date_order(std::string_view text) {
    return looked_up(orders, text, "day-month-year, month-day-year, year-month-day");
}
Result<DecimalMark> read_decimal_mark(std::string_view text) {
    return looked_up(marks, text, "point, comma");
}
Result<char> read_separator(std::string_view text) {
    return looked_up(separators, text, "comma, semicolon, tab, bar");
}

Result<std::pair<std::string, std::string>> read_assignment(std::string_view text) {
    const std::size_t mark = text.rfind('=');
    if (mark == std::string_view::npos || trimmed(text.substr(0, mark)).empty())
        return fail(ProblemKind::wrong_usage, fmt::format("\"{}\" needs the form \"one=other\".", text));
    return std::pair{std::string(trimmed(text.substr(0, mark))), std::string(trimmed(text.substr(mark + 1)))};
}

} // namespace sumpbook::import
