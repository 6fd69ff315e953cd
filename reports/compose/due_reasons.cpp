// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/usage/outlook.h"
#include "reports/compose/due_words.h"
#include "reports/compose/words.h"

#include <array>
#include <cmath>
#include <cstdlib>

namespace sumpbook::compose {
namespace {

using upkeep::DueItem;
using upkeep::LimitKind;
using upkeep::Reason;
using upkeep::ReasonInput;

constexpr std::array<const char*, 12> month_names{"January",   "February", "March",    "April",
                                                  "May",       "June",     "July",     "August",
                                                  "September", "October",  "November", "December"};

std::string whole(double number) { return grouped(decimal_from_double(number, 0)); }

std::string distance_words(double km, const DueItem& item) {
    return words(Distance::from_km(km), item.dial_unit);
}

std::string days_words(double days) { return whole(days) + (std::lround(days) == 1 ? " day" : " days"); }

std::string about(const std::optional<Date>& day) { return day ? "about " + spelled_text(*day) : "never"; }

/// What remains of the interval, by the limit its day comes from.
std::string remaining_words(const Reason& reason, const DueItem& item) {
    const auto& [distance, date, hours] = item.limits;
    const bool past = reason.value < 0;
    const auto of = [&](const std::string& amount, const std::string& interval) {
        return past ? amount + " past its " + interval : amount + " remain of " + interval;
    };
    const double size = std::abs(reason.value);
    switch (item.date_from.value_or(LimitKind::date)) {
    case LimitKind::distance:
        return of(distance_words(size, item), words(distance->interval, item.dial_unit));
    case LimitKind::hours:
        return of(whole(size) + " h", whole(hours->interval_hours) + " h");
    case LimitKind::date:
        break;
    }
    return of(days_words(size), days_words(date->interval_days));
}

std::string riding_words(double km_a_year, const DueItem& item) {
    const double a_day = km_a_year * Distance::from_whole_km(1).in(item.dial_unit) / usage::days_of_year;
    return "your riding is about " + distance_words(km_a_year, item) + " a year, " +
           decimal_from_double(a_day, a_day < 10 ? 1 : 0).text() + " " + std::string(symbol(item.dial_unit)) +
           " a day";
}

std::string season_words(const Reason& reason, const DueItem& item) {
    const std::size_t first = (reason.month + 11) % 12;
    return whole(reason.value * 1000) + " of every 1 000 " + std::string(symbol(item.dial_unit)) +
           " fall in " + month_names.at(first) + " to " + month_names.at((first + 2) % 12);
}

std::string input_words(const Reason& reason, const DueItem& item) {
    switch (reason.input) {
    case ReasonInput::date_limit:
        return "its time ends on " + spelled_text(item.limits.date->at);
    case ReasonInput::hours_limit:
        return whole(item.limits.hours->at_hours) + " engine hours come " + about(item.date_p50);
    case ReasonInput::since_last:
        return remaining_words(reason, item);
    case ReasonInput::riding:
        return riding_words(reason.value, item);
    case ReasonInput::season:
        return season_words(reason, item);
    case ReasonInput::layups:
        return reason.value < 1 ? std::string("a lay-up is planned")
                                : "laid up about " + days_words(reason.value) + " a year";
    case ReasonInput::reading_age:
        break;
    }
    return "the last reading is " + days_words(reason.value) + " old";
}

std::string compared_with(ReasonInput input) {
    switch (input) {
    case ReasonInput::date_limit:
    case ReasonInput::hours_limit:
        return "by its other limits";
    case ReasonInput::since_last:
        return "if it were done today";
    case ReasonInput::riding:
        return "for a bike without a record";
    case ReasonInput::season:
        return "if every month were alike";
    case ReasonInput::layups:
        return "without lay-ups";
    case ReasonInput::reading_age:
        break;
    }
    return "had it been read today";
}

} // namespace

std::string reason_text(const Reason& reason, const DueItem& item) {
    const std::string text = input_words(reason, item);
    if (!reason.moves_days) return text + "; without that it would have no day";
    return text + ": " + days_words(std::abs(*reason.moves_days)) +
           (*reason.moves_days < 0 ? " earlier than " : " later than ") + compared_with(reason.input) + " (" +
           spelled_text(*reason.without) + ")";
}

std::string stale_words(const DueItem& item) {
    if (item.reading_age_days.value_or(0) <= usage::stale_reading_days) return {};
    return "The last reading is " + days_words(*item.reading_age_days) + " old: read your odometer.";
}

} // namespace sumpbook::compose
