// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/garage.h"
#include "model/quantity/dates.h"

#include <array>
#include <cstddef>
#include <vector>

namespace sumpbook::usage {

/// One figure a calendar month, January first.
using ByMonth = std::array<double, 12>;

/// Mean days of each calendar month, February with its leap days: N of numbers.md 3.2.
inline constexpr ByMonth days_of_month{31, 28.25, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
inline constexpr double days_of_year = 365.25;

/// How much each day counts as a day on which the bike could be ridden (numbers.md 3.2): a recorded day 1,
/// a day laid up 0; a day to come 1 less the share of its calendar month that was laid up in the record, a
/// planned lay-up 0. Of one without an end nobody knows how long it goes on: after today the shares count.
class RidingDays {
public:
    /// `first`: the day of the first reading, for the laid-up shares.
    RidingDays(const Bike& bike, const Date& first, const Date& today);

    [[nodiscard]] double counts(const Date& day) const;
    /// Sum over the days after `after`, up to and including `last`.
    [[nodiscard]] ByMonth by_month(const Date& after, const Date& last) const;
    /// Of the days of each calendar month, first reading to today, those laid up: 0 to 1.
    [[nodiscard]] const ByMonth& laid_up_share() const { return laid_up_share_; }

private:
    struct Period {
        std::chrono::sys_days from;
        std::chrono::sys_days until; ///< The last day of it.
    };
    [[nodiscard]] static bool inside(const std::vector<Period>& periods, std::chrono::sys_days day);

    std::chrono::sys_days today_;
    std::vector<Period> recorded_; ///< Lay-ups up to today.
    std::vector<Period> planned_;  ///< Planned ones, as far as they are still to come.
    ByMonth laid_up_share_{};
};

[[nodiscard]] inline std::size_t month_index(const Date& day) {
    return static_cast<unsigned>(day.month()) - 1U;
}

} // namespace sumpbook::usage
