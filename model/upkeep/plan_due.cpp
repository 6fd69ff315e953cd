// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/upkeep/plan_due.h"

#include "model/upkeep/expected_day.h"

#include <algorithm>

namespace sumpbook::upkeep {
namespace {

/// First thing recorded of the bike, in each kind.
Moment record_start(const BikeToday& bike) {
    Moment start;
    if (!bike.bike().log.empty()) start.date = bike.bike().log.front().value.date;
    if (const auto record = bike.odometer().span()) {
        start.distance = record->at_first;
        start.engine_hours = bike.hours().hours_at(record->at_first);
    }
    return start;
}

/// The record starts above the limit in any kind.
bool starts_above(const NextLimits& limits, const Moment& start) {
    return (limits.distance && start.distance && *start.distance > limits.distance->at) ||
           (limits.date && start.date && *start.date > limits.date->at) ||
           (limits.hours && start.engine_hours && *start.engine_hours > limits.hours->at_hours);
}

/// Where a grid starts: going into service; without that day the baseline's, else the first job's.
Moment grid_start(const BikeToday& bike, const std::vector<DoneAndTimed>& history) {
    Moment start = bike.in_service();
    if (!start.date && !history.empty()) start.date = history.front().done.at.date;
    return start;
}

NextLimits opening(const PlanItem& item, const BikeToday& bike) {
    const NextLimits limits = first_limits(item, bike.in_service());
    return starts_above(limits, record_start(bike)) ? NextLimits{} : limits;
}

std::vector<LimitKind> not_computed(const Limits& planned, const DueItem& due) {
    std::vector<LimitKind> kinds;
    if (planned.distance && !(due.limits.distance && due.now.distance)) kinds.push_back(LimitKind::distance);
    if (planned.months && !due.limits.date) kinds.push_back(LimitKind::date);
    if (planned.hours && !(due.limits.hours && due.now.engine_hours)) kinds.push_back(LimitKind::hours);
    return kinds;
}

UnknownBecause why_unknown(const PlanItem& item, const BikeToday& bike, const DueItem& due) {
    const Limits& planned = due.history.empty() ? opening_limits(item) : item.repeat;
    if (!planned.any()) return UnknownBecause::no_limit;
    if (due.limits.any()) return UnknownBecause::no_reading;
    if (due.history.empty() && first_limits(item, bike.in_service()).any())
        return UnknownBecause::never_recorded;
    return UnknownBecause::no_start;
}

} // namespace

std::vector<DoneAndTimed> history_of(const PlanItem& item, const BikeToday& bike) {
    std::vector<DoneAndTimed> history;
    for (auto& done : times_done(item, bike.bike(), bike.odometer(), bike.hours())) {
        const bool in_force = !item.in_force_from || *done.at.date >= *item.in_force_from;
        const NextLimits limits = standing_limits(item, bike, history);
        const auto timing = in_force && !done.baseline ? timed(limits, done.at) : std::nullopt;
        history.push_back({std::move(done), timing});
    }
    return history;
}

NextLimits standing_limits(const PlanItem& item, const BikeToday& bike,
                           const std::vector<DoneAndTimed>& history) {
    if (history.empty()) return opening(item, bike);
    return limits_after(item, grid_start(bike, history), history.back().done.at);
}

void judge(DueItem& item, const BikeToday& bike) {
    item.bike = bike.name();
    item.now = bike.now();
    item.dial_unit = bike.bike().details.value.odometer_unit;
    item.dial_offset = -bike.odometer().dials().shown_at(Distance{});
    item.outlook = bike.outlook().words(item.dial_unit);
    item.reading_age_days = bike.outlook().reading_age_days();
    const Date soon = plus_days(bike.today(), soon_days);
    const auto& distance = item.limits.distance;
    const auto expected = distance ? bike.outlook().day_reaching(distance->at, 0.5, soon) : std::nullopt;
    if (distance) item.chance_passed = bike.outlook().chance_passed(distance->at);
    if (const auto state = worst(limit_states(item.limits, item.now, expected))) {
        item.state = state->state;
        item.decided_by = state->kind;
        item.estimated = state->kind != LimitKind::date && bike.distance_estimated();
    }
    const auto day = [&](double chance) { return expected_day(item.limits, bike, chance); };
    const auto median = day(0.5);
    if (median) item.date_from = median->from;
    item.date_p50 = day_of(median);
    item.date_p10 = day_of(day(0.1));
    item.date_p90 = day_of(day(0.9));
}

std::optional<DueItem> plan_due(const PlanItem& item, const BikeToday& bike) {
    if (item.in_force_from && bike.today() < *item.in_force_from) return std::nullopt;
    DueItem due;
    due.history = history_of(item, bike);
    if (!due.history.empty() && !item.repeat.any()) return std::nullopt;
    due.slug = item.slug;
    due.label = item.label;
    due.kind = due_kind(item.kind);
    due.limits = standing_limits(item, bike, due.history);
    due.estimate = item.estimate;
    due.done_by = item.done_by;
    due.parts = item.parts;
    due.source = item.source;
    due.again = [item, start = grid_start(bike, due.history)](const Moment& job) {
        return limits_after(item, start, job);
    };
    judge(due, bike);
    due.planned = due.history.empty() ? opening_limits(item) : item.repeat;
    due.not_computed = not_computed(due.planned, due);
    if (!due.decided_by) due.unknown_because = why_unknown(item, bike, due);
    return due;
}

} // namespace sumpbook::upkeep
