// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/upkeep/later_times.h"

#include "model/upkeep/expected_day.h"

#include <algorithm>

namespace sumpbook::upkeep {
namespace {

/// The job on a path of chance p: on the day its first limit is reached, today at the earliest.
Moment job_at(const NextLimits& limits, const ExpectedDay& reached, const BikeToday& bike, double p) {
    Moment job;
    job.date = std::max(reached.day, bike.today());
    if (!limits.distance && !limits.hours) return job;
    if (reached.day < bike.today() || reached.from == LimitKind::date)
        job.distance = bike.outlook().position(*job.date, 1 - p);
    else if (reached.from == LimitKind::distance)
        job.distance = limits.distance->at;
    else
        job.distance = bike.hours().distance_at(limits.hours->at_hours);
    if (job.distance) job.engine_hours = bike.hours().hours_at(*job.distance);
    return job;
}

/// The days of the times after the next, each later than the one before: at most so many, and to the day.
std::vector<Date> path(const DueItem& item, const BikeToday& bike, double p, std::size_t most,
                       const Date& last) {
    std::vector<Date> days;
    NextLimits limits = item.limits;
    auto reached = expected_day(limits, bike, p);
    while (reached && days.size() < most) {
        const Moment job = job_at(limits, *reached, bike, p);
        limits = item.again(job);
        reached = expected_day(limits, bike, p);
        if (!reached || reached->day <= *job.date || reached->day > last) break;
        days.push_back(reached->day);
    }
    return days;
}

} // namespace

std::vector<DayRange> later_times(const DueItem& item, const BikeToday& bike) {
    if (!item.again || !item.date_p50) return {};
    const Date last = plus_months(bike.today(), 12 * later_times_years);
    const auto middle = path(item, bike, 0.5, most_later_times, last);
    const auto early = path(item, bike, 0.1, middle.size(), last);
    const auto late = path(item, bike, 0.9, middle.size(), plus_days(bike.today(), usage::horizon_days));
    const auto at = [](const std::vector<Date>& days, std::size_t i) {
        return i < days.size() ? std::optional(days[i]) : std::nullopt;
    };
    std::vector<DayRange> times;
    for (std::size_t i = 0; i < middle.size(); ++i)
        times.push_back({at(early, i), middle[i], at(late, i)});
    return times;
}

} // namespace sumpbook::upkeep
