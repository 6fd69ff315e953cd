// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/quantity/dates.h"

#include <date/date.h>
#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <optional>
#include <vector>

namespace sumpbook {
namespace {

constexpr int first_year = 1900;
constexpr int last_year = 2100;

Place place_of(std::string_view text) {
    return {.file = {}, .line = {}, .column = {}, .text = std::string(text)};
}

bool is_digit(char c) { return c >= '0' && c <= '9'; }
bool is_letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }
char lower(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; }

/// "January" to "December".
const std::string& month_name(unsigned month) {
    static const std::array<std::string, 12> names = [] {
        std::array<std::string, 12> all;
        for (unsigned at = 0; at < 12; ++at)
            all[at] = date::format("%B", date::month{at + 1});
        return all;
    }();
    return names.at(month - 1);
}

/// The month of an English name or of its first letters, at least three of them.
std::optional<unsigned> month_named(std::string_view word) {
    if (word.size() < 3) return std::nullopt;
    for (unsigned month = 1; month <= 12; ++month) {
        const std::string& name = month_name(month);
        if (word.size() <= name.size() && std::equal(word.begin(), word.end(), name.begin(),
                                                     [](char a, char b) { return lower(a) == lower(b); }))
            return month;
    }
    return std::nullopt;
}

struct Parts {
    int year = 0;
    unsigned month = 0;
    unsigned day = 0;
};

/// The day these parts name, or a refusal that says which part is impossible.
Result<Date> real_day(const Parts& parts, std::string_view text) {
    if (parts.year < first_year || parts.year > last_year) {
        return refuse(fmt::format("The year {} is outside {} to {}.", parts.year, first_year, last_year),
                      place_of(text));
    }
    if (parts.month < 1 || parts.month > 12) {
        return refuse(fmt::format("There is no month {}.", parts.month), place_of(text));
    }
    const std::chrono::year_month month{std::chrono::year{parts.year}, std::chrono::month{parts.month}};
    const Date last{month / std::chrono::last};
    const auto days = static_cast<unsigned>(last.day());
    if (parts.day < 1 || parts.day > days) {
        return refuse(fmt::format("{} {} has {} days, so there is no day {}.", month_name(parts.month),
                                  parts.year, days, parts.day),
                      place_of(text));
    }
    return month / std::chrono::day{parts.day};
}

/// A run of digits or of letters, and what stands between it and the run before.
struct Run {
    std::string_view before;
    std::string_view text;
    [[nodiscard]] bool number() const { return is_digit(text.front()); }
    /// Runs are at most four digits where this is asked.
    [[nodiscard]] unsigned value() const {
        unsigned sum = 0;
        for (const char c : text)
            sum = sum * 10 + static_cast<unsigned>(c - '0');
        return sum;
    }
};

std::vector<Run> runs_of(std::string_view text) {
    std::vector<Run> runs;
    std::size_t at = 0;
    while (at < text.size()) {
        const std::size_t gap = at;
        while (at < text.size() && !is_digit(text[at]) && !is_letter(text[at]))
            ++at;
        const std::size_t start = at;
        const auto same_kind = [&](char c) { return is_digit(text[start]) ? is_digit(c) : is_letter(c); };
        while (at < text.size() && same_kind(text[at]))
            ++at;
        runs.push_back({text.substr(gap, start - gap), text.substr(start, at - start)});
    }
    return runs;
}

bool day_or_month(const Run& run) { return run.number() && run.text.size() <= 2; }
bool full_year(const Run& run) { return run.number() && run.text.size() == 4; }

tl::unexpected<Problem> not_a_date(std::string_view text) {
    return refuse(
        "This is not a date. Write the year, month and day as in 2024-12-31, or with the month as a word.",
        place_of(text));
}

tl::unexpected<Problem> short_year(std::string_view text) {
    return refuse("Write the year with all four digits.", place_of(text));
}

Result<Date> year_last(unsigned first, unsigned second, int year, DateOrder order, std::string_view text) {
    const Parts day_first{year, second, first};
    const Parts month_first{year, first, second};
    if (order == DateOrder::day_month_year) return real_day(day_first, text);
    if (order == DateOrder::month_day_year) return real_day(month_first, text);
    const auto as_day_first = real_day(day_first, text);
    const auto as_month_first = real_day(month_first, text);
    if (as_day_first && as_month_first && *as_day_first != *as_month_first) {
        return refuse(
            fmt::format("{} can be read as {} or as {}; write the month as a word, or write {} or {}.", text,
                        spelled_text(*as_day_first), spelled_text(*as_month_first), iso_text(*as_day_first),
                        iso_text(*as_month_first)),
            place_of(text));
    }
    if (as_day_first) return as_day_first;
    // 02/31/2024 was meant with the month first; everything else is told as day first.
    if (as_month_first || (second > 12 && first <= 12)) return as_month_first;
    return as_day_first;
}

/// Three numbers with the same one of - / . between them.
Result<Date> read_numeric(const std::vector<Run>& runs, DateOrder order, std::string_view text) {
    const std::string_view between = runs[1].before;
    const bool one_mark = between == runs[2].before && (between == "-" || between == "/" || between == ".");
    if (!one_mark) return not_a_date(text);
    if (full_year(runs[0]) && day_or_month(runs[1]) && day_or_month(runs[2])) {
        return real_day({static_cast<int>(runs[0].value()), runs[1].value(), runs[2].value()}, text);
    }
    if (!day_or_month(runs[0]) || !day_or_month(runs[1])) return not_a_date(text);
    if (day_or_month(runs[2])) return short_year(text);
    if (!full_year(runs[2])) return not_a_date(text);
    return year_last(runs[0].value(), runs[1].value(), static_cast<int>(runs[2].value()), order, text);
}

/// "3 Mar 2024", "3. March 2024", "3-Mar-2024", "March 3, 2024".
Result<Date> read_spelled(const std::vector<Run>& runs, std::string_view text) {
    for (const Run& run : {runs[1], runs[2]}) {
        if (run.before.find_first_not_of(" .,-") != std::string_view::npos || run.before.size() > 2) {
            return not_a_date(text);
        }
    }
    const bool word_first = !runs[0].number();
    const Run& word = word_first ? runs[0] : runs[1];
    const Run& day = word_first ? runs[1] : runs[0];
    if (word.number() || !day_or_month(day)) return not_a_date(text);
    const auto month = month_named(word.text);
    if (!month) {
        return refuse(fmt::format("\"{}\" is not the English name of a month.", word.text), place_of(text));
    }
    if (day_or_month(runs[2])) return short_year(text);
    if (!full_year(runs[2])) return not_a_date(text);
    return real_day({static_cast<int>(runs[2].value()), *month, day.value()}, text);
}

std::string_view without_outer_blanks(std::string_view text) {
    while (!text.empty() && (text.front() == ' ' || text.front() == '\t'))
        text.remove_prefix(1);
    while (!text.empty() && (text.back() == ' ' || text.back() == '\t'))
        text.remove_suffix(1);
    return text;
}

} // namespace

Result<Date> parse_iso_date(std::string_view text) {
    const auto runs = runs_of(text);
    const bool shaped = text.size() == 10 && runs.size() == 3 && full_year(runs[0]) &&
                        runs[1].before == "-" && day_or_month(runs[1]) && runs[2].before == "-" &&
                        day_or_month(runs[2]) && runs[0].before.empty();
    if (!shaped) {
        return refuse("This is not a date in the form year-month-day, such as 2024-12-31.", place_of(text));
    }
    return real_day({static_cast<int>(runs[0].value()), runs[1].value(), runs[2].value()}, text);
}

Result<Date> read_date(std::string_view text, DateOrder order) {
    const std::string_view trimmed = without_outer_blanks(text);
    if (trimmed.empty()) return refuse("A date is missing here.", place_of(text));
    const auto runs = runs_of(trimmed);
    const auto ends_in_run = !runs.back().text.empty();
    if (runs.size() != 3 || !ends_in_run || !runs[0].before.empty()) return not_a_date(trimmed);
    const bool numeric = runs[0].number() && runs[1].number() && runs[2].number();
    return numeric ? read_numeric(runs, order, trimmed) : read_spelled(runs, trimmed);
}

std::string iso_text(const Date& date) {
    return fmt::format("{:04}-{:02}-{:02}", static_cast<int>(date.year()),
                       static_cast<unsigned>(date.month()), static_cast<unsigned>(date.day()));
}

std::string spelled_text(const Date& date) {
    return fmt::format("{} {:.3} {}", static_cast<unsigned>(date.day()),
                       month_name(static_cast<unsigned>(date.month())), static_cast<int>(date.year()));
}

std::string iso_text(const RecordedTime& time) {
    const std::chrono::sys_seconds moment{std::chrono::seconds{time.seconds_since_1970}};
    const auto day = std::chrono::floor<std::chrono::days>(moment);
    const std::chrono::hh_mm_ss clock{moment - day};
    return fmt::format("{}T{:02}:{:02}:{:02}Z", iso_text(Date{day}), clock.hours().count(),
                       clock.minutes().count(), clock.seconds().count());
}

} // namespace sumpbook
