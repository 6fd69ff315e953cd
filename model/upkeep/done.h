// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/garage.h"
#include "model/upkeep/limits.h"
#include "model/usage/engine_hours.h"
#include "model/usage/odometer.h"

#include <set>
#include <string>
#include <vector>

namespace sumpbook::upkeep {

/// One time an item was done.
struct Done {
    Moment at;
    std::string entry_id;            ///< Empty for a baseline.
    bool baseline = false;           ///< The owner's word from before the record.
    bool distance_estimated = false; ///< From its day in the record: the entry has no accepted reading.
    std::optional<Evidence> evidence;
};

/// Slugs of the plan that an entry satisfies: those it names, an oil change those of its compartment
/// (`oil-filter` only with the filter changed), a component fitted that of its slot, and everything these
/// include, followed to the end. The compartment and slot of a starter slug hold where the item states none.
/// Slugs that the entry names and the plan lacks are among them.
[[nodiscard]] std::set<std::string> slugs_satisfied(const Entry& entry,
                                                    const std::vector<Versioned<PlanItem>>& plan);

/// The slot whose component an item renews; empty where it is for none. A starter slug that states none has
/// its usual one.
[[nodiscard]] std::string_view slot_of(const PlanItem& item);

/// All the times an item was done, in order; the baseline, if there is one, by its date among them. Entries
/// of one day count once: the first, unless only a later one has an accepted reading.
[[nodiscard]] std::vector<Done> times_done(const PlanItem& item, const Bike& bike,
                                           const usage::OdometerSeries& odometer,
                                           const usage::EngineHours& hours);

/// Going into service: date, true distance (0 km where no odometer is given) and hours (0 by a meter).
[[nodiscard]] Moment in_service(const Bike& bike, const usage::OdometerSeries& odometer,
                                const usage::EngineHours& hours);

} // namespace sumpbook::upkeep
