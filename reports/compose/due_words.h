// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/upkeep/due_item.h"

#include <string>
#include <vector>

namespace sumpbook::compose {

// What falls due, in words. Distances stand as the bike's dial shows them.

/// "12 000 km or 3 Mar 2025", "-" for none; with "24 months, not known from when" for a limit of the plan that
/// could not be computed beside one that could.
[[nodiscard]] std::string limit_words(const upkeep::DueItem& item);
/// Where the deciding limit stands: "340 km past", "in about 660 km", "in 12 days"; else why it is unknown.
[[nodiscard]] std::string standing_words(const upkeep::DueItem& item);
/// One sentence on why the item has its state, with what it rests on.
[[nodiscard]] std::string reason_words(const upkeep::DueItem& item);
/// "The distance of today is an estimate: 12 340 km."
[[nodiscard]] std::string estimate_words(const upkeep::DueItem& item);
/// When it is expected: "12 Dec 2026 to 3 Mar 2027, about 24 Jan", "on 11 Apr 2024", "reached 3 Mar 2024",
/// "-".
[[nodiscard]] std::string expected_words(const upkeep::DueItem& item);
/// "one chance in ten by 12 Dec 2026, an even chance by 24 Jan 2027, nine in ten by 3 Mar 2027"; empty
/// where all are one day, or none.
[[nodiscard]] std::string chances_words(const upkeep::DayRange& days);
/// "4 013 km remain of 6 000 km: 120 days earlier than if it were done today".
[[nodiscard]] std::string reason_text(const upkeep::Reason& reason, const upkeep::DueItem& item);
/// "The last reading is 41 days old: read your odometer."; empty for a reading of the last 30 days.
[[nodiscard]] std::string stale_words(const upkeep::DueItem& item);
/// "3 Mar 2024 at 6 010 km", with "about" where the distance is of the day and not of the entry.
[[nodiscard]] std::string done_words(const upkeep::Done& done, const upkeep::DueItem& item);
/// "late by 110 km", "in window", "early by 12 days"; the amounts of the kinds that make it so.
[[nodiscard]] std::string timing_words(const upkeep::TimedJob& timed, DistanceUnit unit);
/// "Distance limit", ...: kinds the plan sets that could not be computed, listed; empty for none.
[[nodiscard]] std::string not_computed_words(const std::vector<upkeep::LimitKind>& kinds);

} // namespace sumpbook::compose
