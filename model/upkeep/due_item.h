// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/upkeep/done.h"
#include "model/upkeep/limit_state.h"
#include "model/upkeep/timing.h"

#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace sumpbook::upkeep {

enum class DueKind { upkeep, safety, statutory, renewal, recall, cost, component };
/// "upkeep", "safety", ...
[[nodiscard]] std::string_view slug(DueKind kind);
[[nodiscard]] DueKind due_kind(PlanKind kind);

/// Why nothing can be said about when an item falls due.
enum class UnknownBecause {
    never_recorded, ///< The record starts past its first limit, and it was never recorded here.
    no_reading,     ///< No accepted odometer reading.
    no_start,       ///< Neither a job nor a day of going into service to count from.
    no_limit,       ///< The plan sets no limit.
    not_looked_up,  ///< A recall of which it is not known whether it applies.
};

/// One time an item was done, and how that lay to its limits. Absent timing: there was nothing to compare
/// with, or the plan was not in force yet.
struct DoneAndTimed {
    Done done;
    std::optional<TimedJob> timed;
};

/// When something happens: with a chance of 10, 50 and 90 % by these days. Absent: not within 60 years, or no
/// limit has a day.
struct DayRange {
    std::optional<Date> p10;
    std::optional<Date> p50;
    std::optional<Date> p90;
    bool operator==(const DayRange&) const = default;
};

/// What an item's day rests on.
enum class ReasonInput {
    date_limit,  ///< Left out: no limit on the date.
    hours_limit, ///< Left out: no limit on engine hours.
    since_last,  ///< What has gone of the interval; left out: as if done today.
    riding,      ///< As usage::OutlookInput, and the following.
    season,
    layups,
    reading_age,
};
/// "date-limit", "since-last", ...
[[nodiscard]] std::string_view slug(ReasonInput input);

/// How much one input moves the day an item falls due.
struct Reason {
    ReasonInput input = ReasonInput::date_limit;
    std::optional<Date> without; ///< The day with this input left out; absent: none, or not within 60 years.
    std::optional<int> moves_days; ///< From there to the day with it; negative: it makes it earlier.
    double value = 0; ///< since_last: what remains, in km, days or hours by the limit that decides; riding:
                      ///< km in the next 365 days; season: of a year's distance the share of its three
                      ///< highest months running; layups: days laid up of a year; reading_age: days. Else 0.
    unsigned month = 0; ///< season: the first of the three, 1 = January.
};

/// One thing that falls due on a bike.
struct DueItem {
    std::string bike;
    /// Of the plan item; "recall-...", "cost-...", "front-tyre-age" and "wear-..." for others. Once a bike:
    /// of equal ones the second ends in "-2".
    std::string slug;
    std::string label; ///< What the owner sees.
    DueKind kind = DueKind::upkeep;
    DueState state = DueState::unknown;
    std::optional<LimitKind> decided_by; ///< The limit the state comes from; absent for `unknown`.
    bool estimated = false;              ///< That limit was compared with an estimate of today's distance.
    std::optional<UnknownBecause> unknown_because;
    NextLimits limits;
    Limits planned;                      ///< What the plan sets for the next time; none for others.
    std::vector<LimitKind> not_computed; ///< Kinds the plan sets that could not be computed.
    Moment now;
    DistanceUnit dial_unit = DistanceUnit::km; ///< Of the bike's dial.
    Distance dial_offset; ///< True distance minus what the dial shows now: 0 unless the dial was changed.
    /// When the first of its limits is reached: with a chance of 10, 50 and 90 %.
    std::optional<Date> date_p10;
    std::optional<Date> date_p50;
    std::optional<Date> date_p90;
    std::optional<LimitKind> date_from; ///< The limit `date_p50` comes from.
    /// The distance limit may have been passed since the last reading, with this chance; absent where that is
    /// 30 days old or younger, or the limit is passed by it.
    std::optional<double> chance_passed;
    std::optional<int> reading_age_days; ///< Absent without a reading.
    /// Its limits once it has been done at some moment; empty where it is not known to come again.
    std::function<NextLimits(const Moment&)> again;
    std::vector<DayRange> later_times; ///< The times after the next, where they were asked for.
    std::vector<Reason> reasons;       ///< The three that move its day most, where they were asked for.
    std::string outlook;               ///< What days that come from distance rest on, for the owner.
    std::vector<DoneAndTimed> history; ///< Oldest first.
    std::optional<Money> estimate;     ///< What it may cost, by the owner.
    std::optional<DoneBy> done_by;
    std::vector<std::string> parts;
    std::optional<std::string> source; ///< Where the interval comes from.
    /// Of a part that wears or ages: the slot a new one is fitted to ("front-tyre"), or the plan item that
    /// sets it right ("valve-clearance"). Empty for all else.
    std::string set_right_by;

    [[nodiscard]] const DoneAndTimed* last_done() const {
        return history.empty() ? nullptr : &history.back();
    }
};

} // namespace sumpbook::upkeep
