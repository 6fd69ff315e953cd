// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/due_words.h"

#include "reports/compose/plan.h"
#include "reports/compose/words.h"

#include <cstdlib>

namespace sumpbook::compose {
namespace {

using upkeep::DueItem;
using upkeep::LimitKind;
using upkeep::UnknownBecause;

std::string days_words(int days) { return std::to_string(days) + (days == 1 ? " day" : " days"); }

std::string hours_words(double hours) { return grouped(decimal_from_double(hours, 1)) + " h"; }

std::string on_dial(Distance true_distance, const DueItem& item) {
    return words(true_distance - item.dial_offset, item.dial_unit);
}

std::string joined(const std::vector<std::string>& parts, const std::string& between) {
    std::string text;
    for (const auto& part : parts)
        text += (text.empty() ? "" : between) + part;
    return text;
}

/// "340 km past", "in 340 km", "reached".
std::string stand(bool past, bool zero, const std::string& amount, bool estimated) {
    if (zero) return "reached";
    const std::string about = estimated ? "about " : "";
    return past ? about + amount + " past" : "in " + about + amount;
}

std::string distance_stand(const DueItem& item) {
    const Distance past = *item.now.distance - item.limits.distance->at;
    const Distance size = past < Distance{} ? -past : past;
    return stand(past > Distance{}, past == Distance{}, words(size, item.dial_unit), item.estimated);
}

std::string date_stand(const DueItem& item) {
    const int past = days_between(item.limits.date->at, *item.now.date);
    return past == 0 ? "today" : stand(past > 0, false, days_words(std::abs(past)), false);
}

std::string hours_stand(const DueItem& item) {
    const double past = *item.now.engine_hours - item.limits.hours->at_hours;
    return stand(past > 0, past == 0, hours_words(std::abs(past)), item.estimated);
}

std::string unknown_words(const DueItem& item) {
    switch (item.unknown_because.value_or(UnknownBecause::no_limit)) {
    case UnknownBecause::never_recorded:
        return "never recorded here";
    case UnknownBecause::no_reading:
        return "no odometer reading yet";
    case UnknownBecause::no_start:
        return "nothing to count from";
    case UnknownBecause::not_looked_up:
        return "find out whether it applies";
    case UnknownBecause::no_limit:
        break;
    }
    return "no limit set";
}

std::string what_to_do(const DueItem& item) {
    switch (item.unknown_because.value_or(UnknownBecause::no_limit)) {
    case UnknownBecause::never_recorded:
        return "The record starts past its first limit. Say when it was last done with: sumpbook plan "
               "baseline " +
               item.slug + ", or have it done.";
    case UnknownBecause::no_reading:
        return "Read the odometer and record it.";
    case UnknownBecause::no_start:
        return "Say when the bike went into service (bike edit --in-service), or when this was last done "
               "(plan "
               "baseline " +
               item.slug + ").";
    case UnknownBecause::not_looked_up:
        return "Ask the maker or an agent with the frame number.";
    case UnknownBecause::no_limit:
        break;
    }
    return "Set its interval with: sumpbook plan set " + item.slug + ".";
}

/// Where the window of the deciding limit ends; empty where there is no window.
std::string window_end(const DueItem& item) {
    const auto& [distance, date, hours] = item.limits;
    switch (*item.decided_by) {
    case LimitKind::distance:
        return distance->window == Distance{} ? "" : "at " + on_dial(distance->at + distance->window, item);
    case LimitKind::hours:
        return hours->window_hours > 0 ? "at " + hours_words(hours->at_hours + hours->window_hours) : "";
    case LimitKind::date:
        break;
    }
    if (date->window_days <= 0) return "";
    return "on " + spelled_text(plus_days(date->at, static_cast<int>(date->window_days)));
}

std::string window_words(const DueItem& item) {
    if (item.state != upkeep::DueState::due && item.state != upkeep::DueState::overdue) return {};
    const std::string end = window_end(item);
    return end.empty() ? "" : ", its window ends " + end;
}

std::string decided_limit(const DueItem& item) {
    switch (*item.decided_by) {
    case LimitKind::distance:
        return on_dial(item.limits.distance->at, item);
    case LimitKind::hours:
        return hours_words(item.limits.hours->at_hours);
    case LimitKind::date:
        break;
    }
    return spelled_text(item.limits.date->at);
}

/// A limit of the plan that stands nowhere yet, since nothing is known to count it from: "24 months, not
/// known from when"; empty where the limit stands.
std::string uncounted_words(LimitKind kind, const DueItem& item) {
    Limits one;
    if (kind == LimitKind::distance && !item.limits.distance) one.distance = item.planned.distance;
    if (kind == LimitKind::date && !item.limits.date) one.months = item.planned.months;
    if (kind == LimitKind::hours && !item.limits.hours) one.hours = item.planned.hours;
    if (!one.any()) return {};
    return limits_words(one) + ", not known from " + (kind == LimitKind::date ? "when" : "what");
}

/// Without the year where that is the year of the day before it: "24 Jan".
std::string short_day(const Date& day, const Date& named) {
    const std::string text = spelled_text(day);
    return day.year() == named.year() ? text.substr(0, text.rfind(' ')) : text;
}

} // namespace

std::string expected_words(const DueItem& item) {
    if (!item.date_p50) return "-";
    const bool on_a_date = item.date_from == LimitKind::date;
    const Date& day = *item.date_p50;
    if (day < *item.now.date)
        return (on_a_date || !item.estimated ? "reached " : "reached about ") + spelled_text(day);
    if (on_a_date) {
        const std::string text = "on " + spelled_text(day);
        return item.date_p10 < day ? text + ", perhaps from " + short_day(*item.date_p10, day) + " on" : text;
    }
    if (item.date_p10 == item.date_p90) return "about " + spelled_text(day);
    if (!item.date_p90) return "about " + spelled_text(day) + ", or much later";
    return short_day(*item.date_p10, *item.date_p90) + " to " + spelled_text(*item.date_p90) + ", about " +
           short_day(day, *item.date_p90);
}

std::string chances_words(const upkeep::DayRange& days) {
    if (!days.p50 || days.p10 == days.p90) return {};
    const auto by = [](const std::optional<Date>& day) {
        return day ? " by " + spelled_text(*day) : std::string(" within 60 years: no");
    };
    return "one chance in ten" + by(days.p10) + ", an even chance" + by(days.p50) + ", nine in ten" +
           by(days.p90);
}

std::string limit_words(const DueItem& item) {
    std::vector<std::string> limits;
    if (item.limits.distance) limits.push_back(on_dial(item.limits.distance->at, item));
    if (item.limits.hours) limits.push_back(hours_words(item.limits.hours->at_hours));
    if (item.limits.date) limits.push_back(spelled_text(item.limits.date->at));
    if (limits.empty()) return "-";
    for (const auto kind : item.not_computed) {
        if (auto uncounted = uncounted_words(kind, item); !uncounted.empty())
            limits.push_back(std::move(uncounted));
    }
    return joined(limits, " or ");
}

std::string standing_words(const DueItem& item) {
    if (item.state == upkeep::DueState::unknown) return unknown_words(item);
    if (!item.decided_by) return "open";
    switch (*item.decided_by) {
    case LimitKind::distance:
        return distance_stand(item);
    case LimitKind::hours:
        return hours_stand(item);
    case LimitKind::date:
        break;
    }
    return date_stand(item);
}

std::string reason_words(const DueItem& item) {
    if (item.state == upkeep::DueState::unknown) return unknown_words(item) + ". " + what_to_do(item);
    if (!item.decided_by) return "It is open.";
    std::string text =
        "The limit is " + decided_limit(item) + window_words(item) + "; " + standing_words(item) + ".";
    if (item.estimated) text += " " + estimate_words(item);
    return text;
}

std::string estimate_words(const DueItem& item) {
    return "The distance of today is an estimate: " + on_dial(*item.now.distance, item) + ".";
}

std::string done_words(const upkeep::Done& done, const DueItem& item) {
    std::string text = done.at.date ? spelled_text(*done.at.date) : std::string("-");
    if (done.at.distance)
        text += (done.distance_estimated ? " at about " : " at ") + on_dial(*done.at.distance, item);
    if (done.baseline) text += ", by your word";
    return text;
}

std::string timing_words(const upkeep::TimedJob& timed, DistanceUnit unit) {
    if (timed.timing == upkeep::Timing::in_window) return std::string(words(timed.timing));
    const bool late = timed.timing == upkeep::Timing::late;
    std::vector<std::string> amounts;
    if (timed.past_distance && (*timed.past_distance > Distance{}) == late)
        amounts.push_back(words(late ? *timed.past_distance : -*timed.past_distance, unit));
    if (timed.past_hours && (*timed.past_hours > 0) == late)
        amounts.push_back(hours_words(std::abs(*timed.past_hours)));
    if (timed.past_days && (*timed.past_days > 0) == late)
        amounts.push_back(days_words(std::abs(*timed.past_days)));
    return std::string(words(timed.timing)) + " by " + joined(amounts, " and ");
}

std::string not_computed_words(const std::vector<LimitKind>& kinds) {
    std::vector<std::string> names;
    for (const auto kind : kinds) {
        if (kind == LimitKind::distance) names.emplace_back("distance");
        if (kind == LimitKind::date) names.emplace_back("months");
        if (kind == LimitKind::hours) names.emplace_back("hours");
    }
    return joined(names, ", ");
}

} // namespace sumpbook::compose
