// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/usage/outlook.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace sumpbook::usage {

PlainOutlook::PlainOutlook(const OdometerSeries& odometer, const Date& today)
    : odometer_(odometer)
    , today_(today)
    , rate_(plain_rate(odometer)) {}

std::optional<TodayDistance> PlainOutlook::today() const {
    const auto record = odometer_.span();
    if (!record) return std::nullopt;
    if (record->last >= today_) return TodayDistance{record->at_last, false, record->last, record->at_last};
    if (!rate_) return TodayDistance{record->at_last, true, record->last, record->at_last};
    const double estimate = record->at_last.km() + rate_->km_a_day * days_between(record->last, today_);
    const auto whole_km = Distance::from_whole_km(std::llround(estimate));
    return TodayDistance{std::max(whole_km, record->at_last), true, record->last, record->at_last};
}

std::optional<Date> PlainOutlook::day_reaching(Distance distance, double /*chance*/) const {
    const auto record = odometer_.span();
    if (!record) return std::nullopt;
    if (distance <= record->at_last) return odometer_.day_reached(distance).value_or(record->first);
    if (!rate_ || rate_->km_a_day <= 0) return std::nullopt;
    const double days = std::ceil((distance - record->at_last).km() / rate_->km_a_day);
    if (days > horizon_days) return std::nullopt;
    return plus_days(record->last, static_cast<int>(days));
}

std::string PlainOutlook::words(DistanceUnit unit) const {
    if (!rate_) return "no dates from distance yet: the accepted readings span less than a week";
    const double a_day = rate_->km_a_day * Distance::from_whole_km(1).in(unit);
    return fmt::format("from your plain average of {} {} a day since {}; no range yet",
                       decimal_from_double(a_day, a_day < 10 ? 1 : 0).text(), symbol(unit),
                       static_cast<int>(rate_->since.year()));
}

std::unique_ptr<Outlook> outlook_of(const Bike& /*bike*/, const OdometerSeries& odometer, const Date& today) {
    return std::make_unique<PlainOutlook>(odometer, today);
}

} // namespace sumpbook::usage
