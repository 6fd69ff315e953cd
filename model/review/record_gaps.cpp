// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/review/record_gaps.h"

#include "model/usage/odometer.h"

#include <algorithm>

namespace sumpbook::review {
namespace {

constexpr int last_month_days = 31;

bool covers(const LogEntry& entry, const Date& from, const Date& to) {
    const auto* layup = std::get_if<Layup>(&entry.value.body);
    return layup != nullptr && !layup->planned && entry.value.date <= from && layup->until &&
           days_between(*layup->until, to) <= last_month_days;
}

/// The last accepted reading up to `from` and the first from `to` on.
std::optional<Distance> ridden_between(const usage::OdometerSeries& odometer, const Date& from,
                                       const Date& to) {
    std::optional<Distance> before;
    std::optional<Distance> after;
    for (const auto& reading : odometer.readings()) {
        if (!reading.accepted) continue;
        if (reading.date <= from) before = reading.distance;
        if (reading.date >= to && !after) after = reading.distance;
    }
    if (!before || !after) return std::nullopt;
    return *after - *before;
}

} // namespace

std::vector<RecordGap> record_gaps(const Bike& bike) {
    const auto odometer = usage::OdometerSeries::of(bike);
    std::vector<RecordGap> gaps;
    for (std::size_t i = 1; i < bike.log.size(); ++i) {
        const Date& from = bike.log[i - 1].value.date;
        const Date& to = bike.log[i].value.date;
        if (days_between(from, to) < gap_days) continue;
        const bool laid_up =
            std::ranges::any_of(bike.log, [&](const LogEntry& entry) { return covers(entry, from, to); });
        gaps.push_back({from, to, ridden_between(odometer, from, to), laid_up});
    }
    return gaps;
}

} // namespace sumpbook::review
