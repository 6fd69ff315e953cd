// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/usage/outlook.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace sumpbook::usage {
namespace {

constexpr int a_year = 365;

Date first_day(const OdometerSeries& odometer, const Date& today) {
    const auto record = odometer.span();
    return record ? record->first : today;
}

Date last_day(const OdometerSeries& odometer, const Date& today) {
    const auto record = odometer.span();
    return record ? record->last : today;
}

std::optional<double> owners_guess_km(const Bike& bike) {
    const auto& written = bike.details.value.expected_distance_a_year;
    const auto distance = written ? distance_of(*written) : refuse("not stated");
    return distance && *distance > Distance{} ? std::optional(distance->km()) : std::nullopt;
}

/// To about three figures: nobody rides 2 959 km a year.
double rounded(double amount) { return amount < 1000 ? std::round(amount) : std::round(amount / 10) * 10; }

/// 12345 -> "12 345".
std::string spaced(long long number) {
    std::string text = std::to_string(number);
    for (std::size_t place = text.size(); place > 3;) {
        place -= 3;
        text.insert(place, " ");
    }
    return text;
}

} // namespace

Outlook::Outlook(const Bike& bike, const OdometerSeries& odometer, const Date& today)
    : odometer_(&odometer)
    , today_(today)
    , first_(first_day(odometer, today))
    , origin_(last_day(odometer, today))
    , owners_km_a_year_(owners_guess_km(bike))
    , riding_(bike, first_, today)
    , forecast_(learn_riders(steps_of(odometer.day_ends()), riding_, owners_km_a_year_), riding_, origin_) {
    if (const auto record = odometer.span()) last_ = record->at_last;
}

Outlook::Outlook(const Outlook& base, Riders riders, RidingDays riding, const Date& origin)
    : odometer_(base.odometer_)
    , today_(base.today_)
    , first_(base.first_)
    , origin_(origin)
    , last_(base.last_)
    , owners_km_a_year_(base.owners_km_a_year_)
    , riding_(std::move(riding))
    , forecast_(std::move(riders), riding_, origin_) {}

Outlook Outlook::without(OutlookInput input) const {
    Riders riders = forecast_.riders();
    switch (input) {
    case OutlookInput::riding:
        return {*this, learn_riders({}, riding_, owners_km_a_year_), riding_, origin_};
    case OutlookInput::season:
        for (auto& pace : riders.pace)
            pace.fill(1);
        return {*this, std::move(riders), riding_, origin_};
    case OutlookInput::layups:
        return {*this, std::move(riders), RidingDays(Bike{}, first_, today_), origin_};
    case OutlookInput::reading_age:
        break;
    }
    auto day_ends = odometer_->day_ends();
    if (last_ && origin_ < today_) day_ends.push_back({today_, *last_});
    return {*this, learn_riders(steps_of(day_ends), riding_, owners_km_a_year_), riding_, today_};
}

std::optional<TodayDistance> Outlook::today() const {
    const auto record = odometer_->span();
    if (!record) return std::nullopt;
    if (origin_ >= today_) return TodayDistance{*last_, record->last < today_, record->last, *last_};
    const double estimate_km =
        last_->km() + forecast_.distance_quantile_km(0, days_between(origin_, today_), 0.5);
    const auto whole_km = Distance::from_whole_km(std::llround(estimate_km));
    return TodayDistance{std::max(whole_km, *last_), true, record->last, *last_};
}

std::optional<Date> Outlook::day_reaching(Distance distance, double chance,
                                          const std::optional<Date>& latest) const {
    const auto record = odometer_->span();
    if (!record) return std::nullopt;
    if (distance <= *last_) {
        const Date day = odometer_->day_reached(distance).value_or(record->first);
        return !latest || day <= *latest ? std::optional(day) : std::nullopt;
    }
    const int latest_day = latest ? std::min(horizon_days, days_between(origin_, *latest)) : horizon_days;
    const auto day = forecast_.day_to_reach((distance - *last_).km(), chance, latest_day);
    return day ? std::optional(plus_days(origin_, *day)) : std::nullopt;
}

std::optional<double> Outlook::chance_passed(Distance distance) const {
    const int age = days_between(origin_, today_);
    if (!last_ || age <= stale_reading_days || distance <= *last_) return std::nullopt;
    return forecast_.chance_reached((distance - *last_).km(), age);
}

std::optional<Distance> Outlook::position(const Date& day, double chance) const {
    if (!last_) return std::nullopt;
    if (day <= origin_) return odometer_->position(day);
    const int days = days_between(origin_, day);
    return *last_ + Distance::from_km(forecast_.distance_quantile_km(0, days, chance));
}

DistanceRange Outlook::in_the_next(int days) const {
    const int from = days_between(origin_, today_);
    const auto at = [&](double chance) {
        return Distance::from_km(forecast_.distance_quantile_km(from, from + days, chance));
    };
    return {at(0.1), at(0.5), at(0.9)};
}

std::optional<int> Outlook::reading_age_days() const {
    return last_ ? std::optional(days_between(origin_, today_)) : std::nullopt;
}

ByMonth Outlook::share_of_year() const {
    ByMonth share{};
    double sum = 0;
    const Riders& riders = forecast_.riders();
    for (const auto& rider : riders.kept) {
        const double km = rider.weight * rider.mean_km_a_year();
        for (std::size_t m = 0; m < share.size(); ++m)
            share[m] += km * riders.pace[rider.clock][m] * days_of_month[m];
    }
    for (const double s : share)
        sum += s;
    for (double& s : share)
        s /= sum;
    return share;
}

std::string Outlook::words(DistanceUnit unit) const {
    if (!words_.empty() && words_unit_ == unit) return words_;
    const auto amount = [&](double km) {
        const double in_unit = km * Distance::from_whole_km(1).in(unit);
        return fmt::format("{} {}", spaced(std::llround(rounded(in_unit))), symbol(unit));
    };
    words_unit_ = unit;
    if (!last_) {
        words_ = "no days from distance yet: the odometer was never read";
    } else if (learnt()) {
        const int from = days_between(origin_, today_);
        const double year_km = forecast_.distance_quantile_km(from, from + a_year, 0.5);
        words_ = fmt::format("from your riding since {}, about {} in the next 12 months",
                             static_cast<int>(first_.year()), amount(year_km));
    } else if (owners_km_a_year_) {
        words_ = fmt::format("from your guess of {} a year, until a week of riding is recorded",
                             amount(*owners_km_a_year_));
    } else {
        words_ = fmt::format("from a common {} a year, an assumption, until a week of riding is recorded",
                             amount(default_km_a_year));
    }
    return words_;
}

} // namespace sumpbook::usage
