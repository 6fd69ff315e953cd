// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/upkeep/done.h"
#include "model/upkeep/limit_state.h"
#include "model/upkeep/timing.h"

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
    std::vector<LimitKind> not_computed; ///< Kinds the plan sets that could not be computed.
    Moment now;
    DistanceUnit dial_unit = DistanceUnit::km; ///< Of the bike's dial.
    Distance dial_offset; ///< True distance minus what the dial shows now: 0 unless the dial was changed.
    /// When the first of its limits is reached: with a chance of 10, 50 and 90 %. P10 and P90 are absent
    /// where the distance has no range yet; all where no limit has a day.
    std::optional<Date> date_p10;
    std::optional<Date> date_p50;
    std::optional<Date> date_p90;
    std::optional<LimitKind> date_from; ///< The limit `date_p50` comes from.
    std::string outlook;                ///< What days that come from distance rest on, for the owner.
    std::vector<DoneAndTimed> history;  ///< Oldest first.
    std::optional<Money> estimate;      ///< What it may cost, by the owner.
    std::optional<DoneBy> done_by;
    std::vector<std::string> parts;
    std::optional<std::string> source; ///< Where the interval comes from.

    [[nodiscard]] const DoneAndTimed* last_done() const {
        return history.empty() ? nullptr : &history.back();
    }
};

} // namespace sumpbook::upkeep
