// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/upkeep/limit_state.h"

#include <algorithm>

namespace sumpbook::upkeep {
namespace {

template <class Amount>
DueState state_of(Amount past, Amount window, Amount lead) {
    if (past > window) return DueState::overdue;
    if (past >= Amount{}) return DueState::due;
    return -past <= lead ? DueState::soon : DueState::later;
}

DueState distance_state(const DistanceLimit& limit, const Moment& now, const std::optional<Date>& expected) {
    const DueState state = state_of(*now.distance - limit.at, limit.window, limit.lead);
    const bool expected_soon = expected && now.date && days_between(*now.date, *expected) <= soon_days;
    return state == DueState::later && expected_soon ? DueState::soon : state;
}

} // namespace

std::string_view slug(DueState state) {
    switch (state) {
    case DueState::overdue:
        return "overdue";
    case DueState::due:
        return "due";
    case DueState::unknown:
        return "unknown";
    case DueState::soon:
        return "soon";
    case DueState::later:
        break;
    }
    return "later";
}

std::vector<LimitState> limit_states(const NextLimits& limits, const Moment& now,
                                     const std::optional<Date>& expected) {
    std::vector<LimitState> states;
    if (limits.distance && now.distance)
        states.push_back({LimitKind::distance, distance_state(*limits.distance, now, expected)});
    if (limits.date && now.date) {
        const double past = days_between(limits.date->at, *now.date);
        states.push_back({LimitKind::date, state_of(past, limits.date->window_days, limits.date->lead_days)});
    }
    if (limits.hours && now.engine_hours) {
        const double past = *now.engine_hours - limits.hours->at_hours;
        states.push_back(
            {LimitKind::hours, state_of(past, limits.hours->window_hours, limits.hours->lead_hours)});
    }
    return states;
}

std::optional<LimitState> worst(const std::vector<LimitState>& states) {
    const auto found = std::ranges::min_element(states, {}, &LimitState::state);
    return found == states.end() ? std::nullopt : std::optional(*found);
}

} // namespace sumpbook::upkeep
