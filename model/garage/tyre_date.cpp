// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/garage/tyre_date.h"

#include <algorithm>
#include <optional>
#include <string>

namespace sumpbook {
namespace {

constexpr int first_year_of_three_digits = 1969;
constexpr int last_year_of_three_digits = 1999;

/// The week of that number; absent where the year has no such week.
std::optional<TyreWeek> week_of(int week, int year) {
    using namespace std::chrono;
    const std::chrono::year in{year};
    const sys_days first_sunday{in / January / Sunday[1]};
    const Date starts{first_sunday + weeks{week - 1}};
    if (week < 1 || starts.year() != in) return std::nullopt;
    return TyreWeek{year, starts, plus_days(starts, 6)};
}

/// The years a code of three or four digits may mean, from the digits behind the week.
std::vector<int> years_of(std::string_view digits) {
    if (digits.size() == 2) return {2000 + (digits[0] - '0') * 10 + (digits[1] - '0')};
    std::vector<int> years;
    for (int year = first_year_of_three_digits; year <= last_year_of_three_digits; ++year) {
        if (year % 10 == digits[0] - '0') years.push_back(year);
    }
    return years;
}

bool is_code(std::string_view code) {
    return (code.size() == 3 || code.size() == 4) &&
           std::all_of(code.begin(), code.end(), [](char c) { return c >= '0' && c <= '9'; });
}

tl::unexpected<Problem> refuse_code(std::string_view code, std::string sentence) {
    return refuse(std::move(sentence), {.file = {}, .line = {}, .column = {}, .text = std::string(code)});
}

} // namespace

Result<TyreDate> read_tyre_date(std::string_view code, const Date& today) {
    if (!is_code(code)) {
        return refuse_code(code,
                           "A tyre date code is four digits, week and year (2319 for week 23 of 2019), or "
                           "three on a tyre made before 2000.");
    }
    TyreDate date;
    date.week = (code[0] - '0') * 10 + (code[1] - '0');
    for (const int year : years_of(code.substr(2))) {
        if (const auto week = week_of(date.week, year)) date.weeks.push_back(*week);
    }
    if (date.weeks.empty()) {
        return refuse_code(code, "There is no week " + std::string(code.substr(0, 2)) +
                                     " in the year of this tyre date code; weeks run from 01 to 52, in some "
                                     "years to 53.");
    }
    std::erase_if(date.weeks, [&](const TyreWeek& week) { return week.starts > today; });
    if (date.weeks.empty()) {
        return refuse_code(code, "This tyre date code lies in the future. Read it again on the sidewall.");
    }
    return date;
}

} // namespace sumpbook
