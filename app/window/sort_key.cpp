// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/sort_key.h"

#include "model/quantity/dates.h"

#include <array>
#include <charconv>

namespace sumpbook::window {
namespace {

using document::Severity;

bool is_digit(char c) { return c >= '0' && c <= '9'; }

/// "in about 12 days" -> "12 days".
std::string_view without_lead(std::string_view text) {
    constexpr std::array<std::string_view, 6> leads{"about ", "in ", "on ", "reached ", "since ", "< "};
    for (bool found = true; found;) {
        found = false;
        for (const auto lead : leads) {
            if (!text.starts_with(lead)) continue;
            text.remove_prefix(lead.size());
            found = true;
        }
    }
    return text;
}

/// The digits of a number with blanks between its thousands: "-1 234.50 EUR" -> "-1234.50".
std::string digits_of(std::string_view text) {
    std::string digits;
    const auto digit_at = [&](std::size_t at) { return at < text.size() && is_digit(text[at]); };
    for (std::size_t i = 0; i < text.size(); ++i) {
        const bool sign = i == 0 && text[i] == '-';
        const bool point = text[i] == '.' && digit_at(i + 1);
        const bool group = text[i] == ' ' && digit_at(i + 1) && digit_at(i + 2) && digit_at(i + 3) &&
                           !digit_at(i + 4) && !digits.empty();
        if (is_digit(text[i]) || sign || point)
            digits += text[i];
        else if (!group)
            break;
    }
    return digits;
}

double position(const Date& date) {
    return static_cast<double>(std::chrono::sys_days{date}.time_since_epoch().count());
}

/// "3 May 2026 at 12 345 km": the day spelled in the first three words.
bool spelled_day(std::string_view text, double& day) {
    std::size_t end = 0;
    for (int blanks = 0; end < text.size() && text[end] != ','; ++end) {
        if (text[end] == ' ' && ++blanks == 3) break;
    }
    const auto date = read_date(text.substr(0, end), DateOrder::day_month_year);
    if (!date) return false;
    day = position(*date);
    return true;
}

bool iso_day(std::string_view text, double& day) {
    const auto date = parse_iso_date(text.substr(0, 10));
    if (!date) return false;
    day = position(*date);
    return true;
}

std::string lower(std::string_view text) {
    std::string out(text);
    for (char& c : out)
        c = c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    return out;
}

} // namespace

bool leading_number(std::string_view text, double& number) {
    constexpr double just_below = 0.999;
    const bool below = text.starts_with("< ");
    const auto said = without_lead(text);
    if (iso_day(said, number) || spelled_day(said, number)) return true;
    const std::string digits = digits_of(said);
    if (digits.empty() || digits == "-") return false;
    const auto read = std::from_chars(digits.data(), digits.data() + digits.size(), number);
    if (read.ec != std::errc{}) return false;
    if (below) number *= just_below;
    return true;
}

SortKey sort_key(const document::Cell& cell) {
    switch (cell.severity) {
    case Severity::danger:
        return {0, 0, {}};
    case Severity::caution:
        return {1, 0, {}};
    case Severity::good:
        return {3, 0, {}};
    case Severity::none:
        break;
    }
    if (cell.text.empty() || cell.text == "-") return {9, 0, {}};
    double number = 0;
    if (leading_number(cell.text, number)) return {2, number, {}};
    return {2, 0, lower(cell.text)};
}

} // namespace sumpbook::window
