// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/cost/riding.h"

namespace sumpbook::cost {

Riding::Riding(const upkeep::BikeToday& bike)
    : today_(bike.today())
    , last_reading_(bike.outlook().origin())
    , forecast_(bike.outlook().forecast()) {
    const auto record = bike.odometer().span();
    if (!record) return;
    known_ = true;
    last_km_ = record->at_last.km();
}

std::vector<double> Riding::shapes(const Piece& piece) const {
    return forecast_.shapes(days_between(last_reading_, piece.after),
                            days_between(last_reading_, piece.last));
}

double Riding::distance_quantile_km(double from_day, double to_day, double p) const {
    const double offset = days_between(last_reading_, today_);
    return forecast_.distance_quantile_km(offset + from_day, offset + to_day, p);
}

double Riding::mean_distance_km(double from_day, double to_day) const {
    const double offset = days_between(last_reading_, today_);
    return forecast_.mean_distance_km(offset + from_day, offset + to_day);
}

} // namespace sumpbook::cost
