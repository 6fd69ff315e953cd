// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/plot/ticks.h"

#include <array>
#include <cmath>

namespace sumpbook::plot {

namespace {

enum class Calendar { days, months };
struct DateStep {
    Calendar calendar;
    int count; ///< Days from a Monday on, or months from a January on.
};
constexpr std::array<DateStep, 13> date_steps{{{Calendar::days, 1},
                                               {Calendar::days, 2},
                                               {Calendar::days, 7},
                                               {Calendar::days, 14},
                                               {Calendar::months, 1},
                                               {Calendar::months, 2},
                                               {Calendar::months, 3},
                                               {Calendar::months, 6},
                                               {Calendar::months, 12},
                                               {Calendar::months, 24},
                                               {Calendar::months, 60},
                                               {Calendar::months, 120},
                                               {Calendar::months, 240}}};
constexpr double a_monday = -3; // 1969-12-29

std::string month_and_year(const Date& date) {
    const std::string text = spelled_text(date); // "3 Mar 2024"
    return text.substr(text.find(' ') + 1);
}

std::vector<Tick> day_ticks(Range range, int every) {
    std::vector<Tick> result;
    const double first = a_monday + every * std::ceil((range.from - a_monday) / every);
    std::optional<std::chrono::year> year;
    for (double at = first; at <= range.to; at += every) {
        const Date day = day_at(at);
        const std::string text = spelled_text(day);
        result.push_back({at, year == day.year() ? text.substr(0, text.rfind(' ')) : text});
        year = day.year();
    }
    return result;
}

std::vector<Tick> month_ticks(Range range, int every) {
    constexpr int months_a_year = 12;
    std::vector<Tick> result;
    const Date start = day_at(range.from);
    int months = static_cast<int>(start.year()) * months_a_year;
    if (every > months_a_year) months -= months % every;
    for (;; months += every) {
        const Date day = std::chrono::year{months / months_a_year} /
                         std::chrono::month{static_cast<unsigned>(months % months_a_year + 1)} / 1;
        if (day_position(day) > range.to) return result;
        if (day_position(day) < range.from) continue;
        const std::string text = month_and_year(day);
        result.push_back({day_position(day), every < months_a_year ? text : text.substr(text.find(' ') + 1)});
    }
}

} // namespace

std::vector<Tick> date_ticks(Range range, int at_most) {
    if (!(range.from < range.to)) return {};
    std::vector<Tick> found;
    for (const DateStep& step : date_steps) {
        // Counting before making: a day a tick over a century is not wanted even for a moment.
        const double days = step.calendar == Calendar::days ? step.count : step.count * 30.4;
        if ((range.to - range.from) / days > at_most + 1) continue;
        found =
            step.calendar == Calendar::days ? day_ticks(range, step.count) : month_ticks(range, step.count);
        if (static_cast<int>(found.size()) <= at_most) break;
    }
    if (static_cast<int>(found.size()) > at_most)
        found.resize(static_cast<std::size_t>(std::max(at_most, 0)));
    return found;
}

} // namespace sumpbook::plot
