// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/quantity/dates.h"

namespace sumpbook {

using std::chrono::sys_days;

int days_between(const Date& from, const Date& to) {
    return static_cast<int>((sys_days{to} - sys_days{from}).count());
}

Date plus_days(const Date& date, int days) { return Date{sys_days{date} + std::chrono::days{days}}; }

Date plus_months(const Date& date, int months) {
    const Date moved = date + std::chrono::months{months};
    if (moved.ok()) return moved;
    return Date{moved.year() / moved.month() / std::chrono::last};
}

} // namespace sumpbook
