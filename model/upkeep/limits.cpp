// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/upkeep/limits.h"

#include <algorithm>
#include <cmath>

namespace sumpbook::upkeep {
namespace {

// Window: 10 % of the interval in each kind. SOURCE: TM 9-2320-387-24-1 p. 2-10, 10 % of the lubrication
// mileage; for days and hours the same, DESIGN (numbers.md 4.3).
constexpr int window_part = 10;
// Lead: 30 days, 500 km or 10 % of the interval, whichever is larger; hours 10 %. DESIGN (numbers.md 4.4).
constexpr int lead_part = 10;
constexpr double least_lead_days = 30;
constexpr Distance least_lead = Distance::from_whole_km(500);

std::optional<Distance> margin_distance(const std::optional<Margin>& margin) {
    if (!margin || !margin->distance) return std::nullopt;
    const auto distance = distance_of(*margin->distance);
    return distance ? std::optional(*distance) : std::nullopt;
}

std::optional<double> margin_days(const std::optional<Margin>& margin) {
    return margin && margin->days ? std::optional<double>(*margin->days) : std::nullopt;
}

std::optional<double> margin_hours(const std::optional<Margin>& margin) {
    return margin && margin->hours ? std::optional(margin->hours->to_double()) : std::nullopt;
}

Distance tenth(Distance distance) { return Distance::from_micrometres(distance.micrometres() / window_part); }

DistanceLimit distance_limit(const PlanItem& item, Distance at, Distance interval) {
    DistanceLimit limit{at, interval, tenth(interval), std::max(least_lead, tenth(interval))};
    if (const auto window = margin_distance(item.window)) limit.window = *window;
    if (const auto lead = margin_distance(item.lead)) limit.lead = *lead;
    if (has_no_window(item)) limit.window = Distance{};
    return limit;
}

DateLimit date_limit(const PlanItem& item, const Date& from, const Date& at) {
    const int interval = days_between(from, at);
    const double part = static_cast<double>(interval) / window_part;
    DateLimit limit{at, interval, margin_days(item.window).value_or(part),
                    margin_days(item.lead).value_or(std::max(least_lead_days, part))};
    if (has_no_window(item)) limit.window_days = 0;
    return limit;
}

HoursLimit hours_limit(const PlanItem& item, double at_hours, double interval_hours) {
    HoursLimit limit{at_hours, interval_hours,
                     margin_hours(item.window).value_or(interval_hours / window_part),
                     margin_hours(item.lead).value_or(interval_hours / lead_part)};
    if (has_no_window(item)) limit.window_hours = 0;
    return limit;
}

std::optional<Distance> interval_distance(const Limits& limits) {
    if (!limits.distance) return std::nullopt;
    const auto distance = distance_of(*limits.distance);
    return distance && *distance > Distance{} ? std::optional(*distance) : std::nullopt;
}

std::optional<int> interval_months(const Limits& limits) {
    return limits.months && *limits.months > 0 ? limits.months : std::nullopt;
}

std::optional<double> interval_hours(const Limits& limits) {
    if (!limits.hours || limits.hours->is_zero() || limits.hours->is_negative()) return std::nullopt;
    return limits.hours->to_double();
}

/// One interval on from a moment, in each kind that is known.
NextLimits one_interval_on(const PlanItem& item, const Limits& limits, const Moment& from) {
    NextLimits next;
    if (const auto interval = interval_distance(limits); interval && from.distance)
        next.distance = distance_limit(item, *from.distance + *interval, *interval);
    if (const auto months = interval_months(limits); months && from.date)
        next.date = date_limit(item, *from.date, plus_months(*from.date, *months));
    if (const auto interval = interval_hours(limits); interval && from.engine_hours)
        next.hours = hours_limit(item, *from.engine_hours + *interval, *interval);
    return next;
}

/// The point of a distance grid that a job satisfies, and the next one.
DistanceLimit next_grid_point(const PlanItem& item, Distance start, Distance interval, Distance job) {
    const DistanceLimit shape = distance_limit(item, start, interval);
    const std::int64_t reach = (job + shape.window - start).micrometres();
    const std::int64_t satisfied = std::max<std::int64_t>(0, reach) / interval.micrometres();
    return distance_limit(item, start + Distance::from_micrometres((satisfied + 1) * interval.micrometres()),
                          interval);
}

HoursLimit next_grid_hours(const PlanItem& item, double start_hours, double every_hours, double job_hours) {
    const double window = hours_limit(item, start_hours, every_hours).window_hours;
    const double satisfied = std::max(0.0, std::floor((job_hours + window - start_hours) / every_hours));
    return hours_limit(item, start_hours + (satisfied + 1) * every_hours, every_hours);
}

/// The point k of a date grid as a limit; k from 1.
DateLimit grid_date(const PlanItem& item, const Date& start, int months, int k) {
    return date_limit(item, plus_months(start, (k - 1) * months), plus_months(start, k * months));
}

DateLimit next_grid_date(const PlanItem& item, const Date& start, int months, const Date& job) {
    const auto satisfies = [&](int k) {
        const auto point = grid_date(item, start, months, k);
        return days_between(job, point.at) <= point.window_days;
    };
    const int months_ridden = (static_cast<int>(job.year()) - static_cast<int>(start.year())) * 12 +
                              static_cast<int>(static_cast<unsigned>(job.month())) -
                              static_cast<int>(static_cast<unsigned>(start.month()));
    int next = std::max(1, months_ridden / months); // at or a little before the point wanted
    while (next > 1 && !satisfies(next - 1))
        --next;
    while (satisfies(next))
        ++next;
    return grid_date(item, start, months, next);
}

NextLimits next_on_grid(const PlanItem& item, const Moment& start, const Moment& job) {
    NextLimits next;
    if (const auto interval = interval_distance(item.repeat); interval && start.distance && job.distance)
        next.distance = next_grid_point(item, *start.distance, *interval, *job.distance);
    if (const auto months = interval_months(item.repeat); months && start.date && job.date)
        next.date = next_grid_date(item, *start.date, *months, *job.date);
    if (const auto interval = interval_hours(item.repeat); interval && start.engine_hours && job.engine_hours)
        next.hours = next_grid_hours(item, *start.engine_hours, *interval, *job.engine_hours);
    return next;
}

} // namespace

const Limits& opening_limits(const PlanItem& item) { return item.first.any() ? item.first : item.repeat; }

NextLimits first_limits(const PlanItem& item, const Moment& in_service) {
    return one_interval_on(item, opening_limits(item), in_service);
}

NextLimits limits_after(const PlanItem& item, const Moment& grid_start, const Moment& job) {
    if (item.counted_from == CountedFrom::grid) return next_on_grid(item, grid_start, job);
    return one_interval_on(item, item.repeat, job);
}

bool has_no_window(const PlanItem& item) { return item.kind != PlanKind::upkeep; }

} // namespace sumpbook::upkeep
