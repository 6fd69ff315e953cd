// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/upkeep/bike_today.h"
#include "model/upkeep/limit_state.h"
#include "model/upkeep/limits.h"

#include <optional>

namespace sumpbook::upkeep {

struct ExpectedDay {
    Date day;
    LimitKind from = LimitKind::date; ///< The limit that is reached first.
};

/// The first day by which any of the limits is reached with the chance: the quantile of the earliest
/// (numbers.md 4.5). Absent: no limit has a day within 60 years.
[[nodiscard]] std::optional<ExpectedDay> expected_day(const NextLimits& limits, const usage::Outlook& outlook,
                                                      const usage::EngineHours& hours, double chance);
[[nodiscard]] std::optional<ExpectedDay> expected_day(const NextLimits& limits, const BikeToday& bike,
                                                      double chance);
[[nodiscard]] std::optional<Date> day_of(const std::optional<ExpectedDay>& expected);

} // namespace sumpbook::upkeep
