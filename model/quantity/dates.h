// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/quantity/problem.h"

#include <chrono>
#include <cstdint>
#include <string>
#include <string_view>

namespace sumpbook {

/// A calendar day of the proleptic Gregorian calendar, 1900-01-01 to 2100-12-31, without time or zone.
/// Every Date that leaves `read_date` or `parse_iso_date` is a real day.
using Date = std::chrono::year_month_day;

/// Moment of recording, UTC, whole seconds since 1970-01-01. The writer's clock: a claim, not a proof.
struct RecordedTime {
    std::int64_t seconds_since_1970 = 0;
    auto operator<=>(const RecordedTime&) const = default;
};

/// to - from in days; negative when `to` is earlier.
[[nodiscard]] int days_between(const Date& from, const Date& to);
[[nodiscard]] Date plus_days(const Date& date, int days);
/// Same day of the month, clamped to the month's end: 31 Jan + 1 = end of February, 29 Feb + 12 =
/// 28 Feb. Grid points are start + k x months, never month by month.
[[nodiscard]] Date plus_months(const Date& date, int months);

/// The order of day, month and year in dates that are not ISO.
enum class DateOrder { unknown, year_month_day, day_month_year, month_day_year };

/// YYYY-MM-DD and nothing else; years 1900 to 2100. A day the month does not have is refused by name.
[[nodiscard]] Result<Date> parse_iso_date(std::string_view text);
/// What people type: ISO always; 31.12.2024, 31/12/2024, 31-12-2024 or 12/31/2024 by `order`; 3 Mar
/// 2024, 3 March 2024, March 3, 2024. Where two orders are possible and `order` is unknown it is refused
/// with the question. Two-digit years are refused.
[[nodiscard]] Result<Date> read_date(std::string_view text, DateOrder order = DateOrder::unknown);

[[nodiscard]] std::string iso_text(const Date& date);
/// "3 Mar 2024", months in English whatever the locale.
[[nodiscard]] std::string spelled_text(const Date& date);
/// "2024-03-03T10:15:00Z".
[[nodiscard]] std::string iso_text(const RecordedTime& time);

} // namespace sumpbook
