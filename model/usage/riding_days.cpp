// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/usage/riding_days.h"

#include <algorithm>

namespace sumpbook::usage {

using std::chrono::days;
using std::chrono::sys_days;

RidingDays::RidingDays(const Bike& bike, const Date& first, const Date& today)
    : today_(today) {
    constexpr sys_days never{std::chrono::year{2101} / 1 / 1};
    for (const auto* entry : entries_of<Layup>(bike)) {
        const auto& layup = std::get<Layup>(entry->value.body);
        const Period period{sys_days{entry->value.date}, layup.until ? sys_days{*layup.until} : never};
        if (period.from <= today_) recorded_.push_back({period.from, std::min(period.until, today_)});
        // One without an end may last for years: what its months brought before says more.
        const bool known = layup.planned || period.from <= today_;
        if (known && layup.until && period.until > today_)
            planned_.push_back({std::max(period.from, today_ + days{1}), period.until});
    }
    ByMonth all{};
    ByMonth laid_up{};
    for (sys_days day = sys_days{first}; day <= today_; day += days{1}) {
        const std::size_t month = month_index(Date{day});
        all[month] += 1;
        if (inside(recorded_, day)) laid_up[month] += 1;
    }
    for (std::size_t m = 0; m < 12; ++m)
        laid_up_share_[m] = all[m] > 0 ? laid_up[m] / all[m] : 0;
}

bool RidingDays::inside(const std::vector<Period>& periods, sys_days day) {
    return std::ranges::any_of(periods, [&](const Period& p) { return p.from <= day && day <= p.until; });
}

double RidingDays::counts(const Date& date) const {
    const sys_days day{date};
    if (day <= today_) return inside(recorded_, day) ? 0 : 1;
    return inside(planned_, day) ? 0 : 1 - laid_up_share_[month_index(date)];
}

ByMonth RidingDays::by_month(const Date& after, const Date& last) const {
    ByMonth sums{};
    for (sys_days day = sys_days{after} + days{1}; day <= sys_days{last}; day += days{1}) {
        const Date date{day};
        sums[month_index(date)] += counts(date);
    }
    return sums;
}

} // namespace sumpbook::usage
