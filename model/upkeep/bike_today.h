// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/garage.h"
#include "model/upkeep/limits.h"
#include "model/usage/engine_hours.h"
#include "model/usage/odometer.h"
#include "model/usage/outlook.h"

namespace sumpbook::upkeep {

/// A bike as it stands on a day, worked out once for all that may fall due on it. Entries dated later are
/// not seen, but for lay-ups planned.
class BikeToday {
public:
    BikeToday(const Bike& bike, const Date& today);
    BikeToday(const BikeToday&) = delete;
    BikeToday& operator=(const BikeToday&) = delete;

    [[nodiscard]] const Bike& bike() const { return bike_; }
    [[nodiscard]] const std::string& name() const { return bike_.details.value.name; }
    [[nodiscard]] const Date& today() const { return today_; }
    [[nodiscard]] const usage::OdometerSeries& odometer() const { return odometer_; }
    [[nodiscard]] const usage::EngineHours& hours() const { return hours_; }
    [[nodiscard]] const usage::Outlook& outlook() const { return outlook_; }
    [[nodiscard]] const Moment& in_service() const { return in_service_; }
    /// Today, with the distance of today or its estimate and the hours that go with it.
    [[nodiscard]] const Moment& now() const { return now_; }
    /// True where the distance of `now` is an estimate.
    [[nodiscard]] bool distance_estimated() const { return estimated_; }

private:
    Bike bike_;
    Date today_;
    usage::OdometerSeries odometer_;
    usage::EngineHours hours_;
    usage::Outlook outlook_;
    Moment in_service_;
    Moment now_;
    bool estimated_ = false;
};

} // namespace sumpbook::upkeep
