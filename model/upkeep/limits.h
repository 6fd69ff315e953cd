// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/plan_item.h"
#include "model/quantity/dates.h"
#include "model/quantity/distance.h"

#include <optional>

namespace sumpbook::upkeep {

/// A moment in a bike's life: going into service, a job, or now. What is not known is absent.
struct Moment {
    std::optional<Date> date;
    std::optional<Distance> distance; ///< True distance.
    std::optional<double> engine_hours;
    bool operator==(const Moment&) const = default;
};

/// A limit on distance with the room round it, all 0 or more.
struct DistanceLimit {
    Distance at; ///< True distance.
    Distance interval;
    Distance window; ///< Still in window so far either side.
    Distance lead;   ///< `soon` so far before.
    bool operator==(const DistanceLimit&) const = default;
};

struct DateLimit {
    Date at;
    int interval_days = 0; ///< Days of the interval that ends at this limit.
    double window_days = 0;
    double lead_days = 0;
    bool operator==(const DateLimit&) const = default;
};

struct HoursLimit {
    double at_hours = 0; ///< Engine hours.
    double interval_hours = 0;
    double window_hours = 0;
    double lead_hours = 0;
    bool operator==(const HoursLimit&) const = default;
};

/// When an item falls due next; whichever comes first. A kind that the plan sets and that is absent here
/// could not be computed.
struct NextLimits {
    std::optional<DistanceLimit> distance;
    std::optional<DateLimit> date;
    std::optional<HoursLimit> hours;
    [[nodiscard]] bool any() const { return distance || date || hours; }
    bool operator==(const NextLimits&) const = default;
};

/// The limits that hold until an item has been done once: the first ones, without those the repeating
/// ones.
[[nodiscard]] const Limits& opening_limits(const PlanItem& item);

/// Limits of an item that has never been done: counted from going into service.
[[nodiscard]] NextLimits first_limits(const PlanItem& item, const Moment& in_service);

/// Limits after a job (numbers.md 4.1). Counted from the job itself; on a grid: the job satisfies the last
/// point start + k x interval that is not past it by more than the window, and the next is one interval
/// on (every 10 000: 9 200 counts for 10 000, 8 900 does not, 11 500 gives 20 000). Months of a grid are
/// start + k x months, never month by month. None where the item is done once and over.
[[nodiscard]] NextLimits limits_after(const PlanItem& item, const Moment& grid_start, const Moment& job);

/// True for statutory, safety and renewal items: their window is 0 and cannot be changed (numbers.md 4.4).
[[nodiscard]] bool has_no_window(const PlanItem& item);

} // namespace sumpbook::upkeep
