// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/quantity/dates.h"

#include <string_view>
#include <vector>

namespace sumpbook {

/// One week a tyre may have been made in, Sunday to Saturday.
struct TyreWeek {
    int year = 0;
    Date starts;
    Date ends;
    bool operator==(const TyreWeek&) const = default;
};

/// The week moulded into a tyre's sidewall. Four digits, as used since 2000, name one week; three digits
/// leave the decade open, so every possible week is listed, earliest first.
struct TyreDate {
    int week = 0;                ///< 1 to 53.
    std::vector<TyreWeek> weeks; ///< At least one.
    bool operator==(const TyreDate&) const = default;
};

/// Reads WWYY or WWY. Week 01 is the first full week, Sunday to Saturday; 53 is accepted only where a
/// 53rd week starts in the year; a week that starts after `today` is refused. Three digits stand for each
/// year of 1969 to 1999 with that last digit.
///
/// SOURCE: 49 CFR 574.5 (week and year, full weeks); the rule of 8 July 1999 for four digits; that weeks
/// begin on Sunday is from memory.
[[nodiscard]] Result<TyreDate> read_tyre_date(std::string_view code, const Date& today);

} // namespace sumpbook
