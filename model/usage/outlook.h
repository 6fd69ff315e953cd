// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/usage/distance_forecast.h"
#include "model/usage/odometer.h"

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

/// Not passed with a chance of 10, 50 and 90 %.
struct DistanceRange {
    Distance p10;
    Distance p50;
    Distance p90;
};

/// A last reading older than this is told of: what was foretold from it may have passed unseen.
inline constexpr int stale_reading_days = 30;

/// What a forecast rests on, each of which can be left out to see how much it moves an answer.
enum class OutlookInput {
    riding,      ///< What was ridden; left out: any rider, with the owner's guess or 2 500 km a year.
    season,      ///< More in some months than in others; left out: the same all year.
    layups,      ///< Left out: no day to come is a day laid up.
    reading_age, ///< Days since the last reading; left out: it was read today and shows the same, and the
                 ///< days without a kilometre are learnt from.
};

/// How far a bike will have gone by when (numbers.md 3). One bike, seen from one day. Keeps a reference to
/// the odometer.
class Outlook {
public:
    /// `bike`: its lay-ups, among them planned ones to come, and the owner's guess of a year's distance.
    /// `odometer`: as known on that day.
    Outlook(const Bike& bike, const OdometerSeries& odometer, const Date& today);

    /// The reading of today, else the median estimate rounded to whole km, never below the last reading
    /// (numbers.md 4.4). Absent without an accepted reading.
    [[nodiscard]] std::optional<TodayDistance> today() const;
    /// The first day by whose end the distance is reached with at least this chance (0..1), counted from
    /// the last reading. A distance inside the record gives the day it was reached. Absent: not within 60
    /// years, not by `latest`, or no reading.
    [[nodiscard]] std::optional<Date> day_reaching(Distance distance, double chance,
                                                   const std::optional<Date>& latest = std::nullopt) const;
    /// The chance that the distance has been passed since the last reading: "read your odometer". Absent
    /// where that is not older than 30 days, or inside the record.
    [[nodiscard]] std::optional<double> chance_passed(Distance distance) const;
    /// Where the bike will stand at the end of a day, not passed with this chance. Absent without a reading;
    /// up to the last reading what that says.
    [[nodiscard]] std::optional<Distance> position(const Date& day, double chance) const;
    /// What will be ridden in the days after today.
    [[nodiscard]] DistanceRange in_the_next(int days) const;

    /// The same with one input left out.
    [[nodiscard]] Outlook without(OutlookInput input) const;

    /// Days since the last reading; absent without one.
    [[nodiscard]] std::optional<int> reading_age_days() const;
    /// False where nothing was learnt yet: no reading, or a record under a week.
    [[nodiscard]] bool learnt() const { return forecast().riders().steps > 0; }
    /// Of each month's days the share that will count as laid up, and of a year's distance the share that
    /// falls into each month, lay-ups apart.
    [[nodiscard]] const ByMonth& laid_up_share() const { return riding_.laid_up_share(); }
    [[nodiscard]] ByMonth share_of_year() const;
    /// What the dates rest on, for the owner: "from your riding since 2023, about 2 960 km in the next 12
    /// months".
    [[nodiscard]] std::string words(DistanceUnit unit) const;

    [[nodiscard]] const DistanceForecast& forecast() const { return forecast_; }
    /// The day the forecast counts from: of the last reading, without one today.
    [[nodiscard]] const Date& origin() const { return origin_; }

private:
    Outlook(const Outlook& base, Riders riders, RidingDays riding, const Date& origin);

    const OdometerSeries* odometer_;
    Date today_;
    Date first_;
    Date origin_;
    std::optional<Distance> last_;
    std::optional<double> owners_km_a_year_;
    RidingDays riding_;
    DistanceForecast forecast_;
    mutable std::string words_; ///< Once worked out, in the unit below.
    mutable DistanceUnit words_unit_ = DistanceUnit::km;
};

} // namespace sumpbook::usage
