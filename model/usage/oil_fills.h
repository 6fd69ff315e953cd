// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/garage.h"
#include "model/usage/odometer.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace sumpbook::usage {

/// A moment at which something is known of the oil in a compartment.
struct OilEvent {
    std::string entry_id;
    Date date;
    std::optional<Distance> distance; ///< Of the entry, else of its day in the record; absent: not known.
    Volume added;                     ///< Topped up here; a refill counts 0.
    bool volume_unknown = false;      ///< A top-up of an amount that is not known.
    /// Litres below the upper mark after this event: 0 after a refill and after a top-up to the mark; below
    /// 0 where it was filled past the mark. Absent: not known, also where the level is a fraction and the
    /// bike's litres between the marks are not stated.
    std::optional<double> litres_below_mark;
};

/// One fill of oil, from its refill to the next.
struct OilFill {
    std::optional<std::string> oil_change_id; ///< Absent: the record begins inside this fill.
    std::optional<std::string> oil_name;
    Date from;
    std::optional<Date> until;    ///< Day of the next oil change; absent: the fill in use.
    std::vector<OilEvent> events; ///< In log order; a top-up whose level before is known gives two.
    bool run_in = false;
};

/// The fills of a compartment in order. Run-in fills begin before the first job that names `first-service`;
/// without one, before 1 000 km (DESIGN, numbers.md 2).
[[nodiscard]] std::vector<OilFill> oil_fills(const Bike& bike, const OdometerSeries& odometer,
                                             std::string_view compartment = "engine");

} // namespace sumpbook::usage
