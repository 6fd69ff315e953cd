// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/usage/rate.h"

#include <memory>
#include <optional>
#include <string>

namespace sumpbook::usage {

/// How far the bike has gone by the end of today.
struct TodayDistance {
    Distance distance;
    bool estimated = false; ///< false: an accepted reading of today.
    Date last_reading_on;
    Distance last_reading;
};

/// How far a bike will have gone by when. One bike, seen from one day.
class Outlook {
public:
    virtual ~Outlook() = default;

    /// The reading of today, else the median estimate rounded to whole km (numbers.md 4.4); where nothing
    /// is known of the days since, the last reading, marked estimated. Absent without an accepted reading.
    [[nodiscard]] virtual std::optional<TodayDistance> today() const = 0;
    /// The first day by whose end the distance is reached with at least this chance (0..1). A distance
    /// inside the record gives the day it was reached. Absent: not within 60 years, or nothing to go by.
    [[nodiscard]] virtual std::optional<Date> day_reaching(Distance distance, double chance) const = 0;
    /// True where day_reaching differs from chance to chance, so that P10 and P90 may be printed.
    [[nodiscard]] virtual bool has_range() const = 0;
    /// What the dates rest on, for the owner: "from your plain average of 14 km a day since 2019; no range
    /// yet".
    [[nodiscard]] virtual std::string words(DistanceUnit unit) const = 0;
};

/// The outlook of the plain average: every chance gives the same day.
class PlainOutlook : public Outlook {
public:
    PlainOutlook(const OdometerSeries& odometer, const Date& today);

    [[nodiscard]] std::optional<TodayDistance> today() const override;
    [[nodiscard]] std::optional<Date> day_reaching(Distance distance, double chance) const override;
    [[nodiscard]] bool has_range() const override { return false; }
    [[nodiscard]] std::string words(DistanceUnit unit) const override;

private:
    const OdometerSeries& odometer_;
    Date today_;
    std::optional<PlainRate> rate_;
};

/// The best outlook there is for a bike. Keeps a reference to the odometer.
[[nodiscard]] std::unique_ptr<Outlook> outlook_of(const Bike& bike, const OdometerSeries& odometer,
                                                  const Date& today);

/// Forecasts look no further than this (numbers.md 3.6).
inline constexpr int horizon_days = 60 * 365 + 15;

} // namespace sumpbook::usage
