// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/upkeep/bike_today.h"

#include "model/upkeep/done.h"
#include "model/usage/as_of.h"

namespace sumpbook::upkeep {

BikeToday::BikeToday(const Bike& bike, const Date& today)
    : bike_(usage::as_of(bike, today))
    , today_(today)
    , odometer_(usage::OdometerSeries::of(bike_))
    , hours_(usage::EngineHours::of(bike_, odometer_))
    , outlook_(bike, odometer_, today)
    , in_service_(upkeep::in_service(bike_, odometer_, hours_)) {
    now_.date = today;
    const auto distance = outlook_.today();
    if (!distance) return;
    now_.distance = distance->distance;
    now_.engine_hours = hours_.hours_at(distance->distance);
    estimated_ = distance->estimated;
}

} // namespace sumpbook::upkeep
