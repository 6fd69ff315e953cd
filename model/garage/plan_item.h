// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/entry_parts.h"
#include "model/quantity/dates.h"
#include "model/quantity/distance.h"
#include "model/quantity/money.h"

#include <optional>
#include <string>
#include <vector>

namespace sumpbook {

/// Whichever comes first. Absent: no limit of that kind.
struct Limits {
    std::optional<WrittenDistance> distance;
    std::optional<int> months;
    std::optional<Decimal> hours; ///< Engine hours.
    [[nodiscard]] bool any() const { return distance || months || hours; }
    bool operator==(const Limits&) const = default;
};

/// Room either side of a limit, or time ahead of it.
struct Margin {
    std::optional<WrittenDistance> distance;
    std::optional<int> days;
    std::optional<Decimal> hours;
    bool operator==(const Margin&) const = default;
};

enum class CountedFrom : std::uint8_t { last_done = 0, grid = 1 };
enum class PlanKind : std::uint8_t { upkeep = 0, safety = 1, statutory = 2, renewal = 3 };

/// One line of a bike's upkeep plan.
struct PlanItem {
    std::string slug;  ///< Fixed word, unique in the plan: "engine-oil".
    std::string label; ///< What the owner sees: "Engine oil".
    std::optional<std::string> compartment;
    std::optional<std::string> slot;
    Limits first;  ///< Until it has been done once; none: the repeating ones from the start.
    Limits repeat; ///< None: done once and over.
    CountedFrom counted_from = CountedFrom::last_done;
    std::optional<Margin> window;      ///< Absent: 10 % of each interval (numbers.md 4.3).
    std::optional<Margin> lead;        ///< Absent: 30 days, 500 km, 10 % of the interval, the larger.
    std::vector<std::string> includes; ///< Slugs that a job of this item satisfies as well.
    std::optional<Money> estimate;     // money
    std::optional<DoneBy> done_by;
    std::vector<std::string> parts;
    PlanKind kind = PlanKind::upkeep;
    std::optional<Date> in_force_from;
    std::optional<std::string> source; ///< Where the interval comes from: handbook page, or common practice.
    bool operator==(const PlanItem&) const = default;
};

/// The owner's word for when an item was last done before the record began.
struct Baseline {
    std::string slug;
    Date date;
    std::optional<WrittenDistance> odometer;
    std::optional<Decimal> hours;
    std::optional<Evidence> evidence;
    bool operator==(const Baseline&) const = default;
};

} // namespace sumpbook
