// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/upkeep/timing.h"

namespace sumpbook::upkeep {
namespace {

/// What the kinds say one by one: late in any is late, early in every one is early.
class Verdict {
public:
    template <class Amount>
    void add(Amount past, Amount window) {
        compared_ = true;
        if (past > window) any_late_ = true;
        if (!(-past > window)) all_early_ = false;
    }
    [[nodiscard]] bool compared() const { return compared_; }
    [[nodiscard]] Timing timing() const {
        if (any_late_) return Timing::late;
        return all_early_ ? Timing::early : Timing::in_window;
    }

private:
    bool compared_ = false;
    bool any_late_ = false;
    bool all_early_ = true;
};

} // namespace

std::string_view words(Timing timing) {
    switch (timing) {
    case Timing::early:
        return "early";
    case Timing::late:
        return "late";
    case Timing::in_window:
        break;
    }
    return "in window";
}

std::optional<TimedJob> timed(const NextLimits& limits, const Moment& job) {
    TimedJob result;
    Verdict verdict;
    if (limits.distance && job.distance) {
        result.past_distance = *job.distance - limits.distance->at;
        verdict.add(*result.past_distance, limits.distance->window);
    }
    if (limits.date && job.date) {
        result.past_days = days_between(limits.date->at, *job.date);
        verdict.add(static_cast<double>(*result.past_days), limits.date->window_days);
    }
    if (limits.hours && job.engine_hours) {
        result.past_hours = *job.engine_hours - limits.hours->at_hours;
        verdict.add(*result.past_hours, limits.hours->window_hours);
    }
    if (!verdict.compared()) return std::nullopt;
    result.timing = verdict.timing();
    return result;
}

} // namespace sumpbook::upkeep
