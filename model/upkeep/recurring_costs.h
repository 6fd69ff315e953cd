// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/upkeep/bike_today.h"
#include "model/upkeep/due_item.h"

#include <optional>
#include <string>
#include <vector>

namespace sumpbook::upkeep {

/// A cost that comes again, and its last payment.
struct ComingCost {
    std::string slug; ///< "cost-insurance".
    std::string label;
    std::string category;
    Date counted_from; ///< The day the last payment covers from.
    Date next;
    int every_months = 0;
    std::optional<Date> until;      ///< No payment after this day.
    const LogEntry* last = nullptr; ///< In the bike given.
    std::vector<const LogEntry*> payments;
};
/// Of every series that has not ended: one whose last day is before today is over, whatever was paid; those a
/// plan item speaks of are left out. Payments dated later than today count as made.
[[nodiscard]] std::vector<ComingCost> coming_costs(const Bike& bike, const Date& today);

/// Costs that come again (insurance, tax, storage): each series by its category and text, due every so many
/// months after the day its last payment covers from, until the series ends. A payment counts as a member
/// where category and text agree, or where its category has only one series. Their window is 0. Not listed
/// where an entry of the series satisfies a plan item: that item says when. Named by their category, by
/// their text too where series share it.
[[nodiscard]] std::vector<DueItem> recurring_costs(const BikeToday& bike);

} // namespace sumpbook::upkeep
