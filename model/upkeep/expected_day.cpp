// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/upkeep/expected_day.h"

namespace sumpbook::upkeep {

std::optional<ExpectedDay> expected_day(const NextLimits& limits, const usage::Outlook& outlook,
                                        const usage::EngineHours& hours, double chance) {
    std::optional<ExpectedDay> first;
    const auto take = [&](const std::optional<Date>& day, LimitKind from) {
        if (day && (!first || *day < first->day)) first = ExpectedDay{*day, from};
    };
    const auto by_distance = [&](Distance at, LimitKind from) {
        take(outlook.day_reaching(at, chance, day_of(first)), from);
    };
    if (limits.date) take(limits.date->at, LimitKind::date);
    if (limits.distance) by_distance(limits.distance->at, LimitKind::distance);
    if (limits.hours) by_distance(hours.distance_at(limits.hours->at_hours), LimitKind::hours);
    return first;
}

std::optional<ExpectedDay> expected_day(const NextLimits& limits, const BikeToday& bike, double chance) {
    return expected_day(limits, bike.outlook(), bike.hours(), chance);
}

std::optional<Date> day_of(const std::optional<ExpectedDay>& expected) {
    return expected ? std::optional(expected->day) : std::nullopt;
}

} // namespace sumpbook::upkeep
