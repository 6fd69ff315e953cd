// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/quantity/dates.h"
#include "model/quantity/distance.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace sumpbook::import {

/// One odometer reading in the order in which the readings were taken.
struct RunReading {
    Date date;
    Distance odometer;
    std::string digits; ///< As typed, digits only: 12345.
};

enum class RunFault {
    out_of_run,      ///< One reading, or two, that do not fit between their neighbours: typed wrong.
    falls_and_stays, ///< From here on the clock stays lower: replaced, or another unit.
};

struct RunFinding {
    std::size_t index = 0; ///< Into the readings.
    RunFault fault = RunFault::out_of_run;
    std::optional<Distance> low;  ///< The reading should lie from here,
    std::optional<Distance> high; ///< to here; absent at the ends of the run.
};

/// Readings that fall out of the run of their neighbours. A clock never runs back, so the longest run of
/// readings that never falls is taken as right (the longest non-decreasing subsequence), and what stands
/// outside it is named: up to two in a row as typed wrong, more as a clock that was changed. Where the
/// reading before or after could be the wrong one just as well, the one is named without which the readings
/// rise more evenly by far, else the one that becomes right by a single slip of the hand (two digits swapped,
/// one digit wrong, missing or too many); both where that does not tell them apart. The first and the last
/// reading are named where they lie far off (over ten times the widest other step between readings) and such
/// a slip explains it. DESIGN: the limits are ours.
[[nodiscard]] std::vector<RunFinding> find_run_faults(const std::vector<RunReading>& readings);

/// True where a single slip turns the digits into a whole number from `low` to `high`: two neighbouring
/// digits swapped, one digit replaced, left out or put in.
[[nodiscard]] bool is_one_slip_from(const std::string& digits, double low, double high);

} // namespace sumpbook::import
