// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/garage.h"
#include "model/garage/torque.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace sumpbook::review {

/// An entry in which a fastener was tightened or looked at.
struct FastenerEvent {
    std::string entry_id;
    Date date;
    bool operator==(const FastenerEvent&) const = default;
};

/// What became of the paint mark across a fastener and its seat.
/// SOURCE: Transport Canada TP185 3/2005: the stripe shows that torque was applied, and any later slip.
enum class PaintMark {
    not_stated, ///< Nobody wrote whether one was drawn.
    none,       ///< Not drawn.
    drawn,      ///< Drawn, and not looked at since.
    aligned,    ///< Drawn, and it still lined up when last looked at.
    moved,      ///< It no longer lined up: the fastener turned.
};
[[nodiscard]] std::string_view slug(PaintMark mark);

/// A fastener tightened in a job, and what the record says of it since.
struct Fastener {
    TorqueApplied applied;
    std::optional<std::string> thread; ///< "M8x1" where its name holds one.
    TorquePlausibility plausibility = TorquePlausibility::unknown_thread;
    PaintMark mark = PaintMark::not_stated;
    std::optional<FastenerEvent> looked_at; ///< The last look at its mark.
    std::optional<FastenerEvent> redone;    ///< The next job that tightened it; what follows is of that one.
};
/// The fasteners of a job in its order; empty for another kind of entry. `job` is one of the bike's entries.
[[nodiscard]] std::vector<Fastener> fasteners_of(const Bike& bike, const LogEntry& job);

/// A paint mark looked at in a job.
struct MarkSeen {
    std::string fastener;
    bool still_aligned = true;
    std::optional<FastenerEvent> drawn;  ///< The last job before that tightened it; absent: not recorded.
    std::optional<FastenerEvent> redone; ///< The first job from this one on that tightened it.
};
[[nodiscard]] std::vector<MarkSeen> marks_seen_in(const Bike& bike, const LogEntry& job);

/// The thread that a fastener's name holds as a word of its own: "M8" in "M8 cover bolt", "M10x1.25".
[[nodiscard]] std::optional<std::string> thread_in(std::string_view fastener);

} // namespace sumpbook::review
