// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/cost/riding.h"

namespace sumpbook::cost {
namespace {

/// The last accepted reading of each day.
std::vector<usage::DayEnd> day_ends(const usage::OdometerSeries& odometer) {
    std::vector<usage::DayEnd> ends;
    for (const auto& reading : odometer.readings()) {
        if (!reading.accepted) continue;
        if (!ends.empty() && ends.back().date == reading.date) ends.pop_back();
        ends.push_back({reading.date, reading.distance});
    }
    return ends;
}

Date first_day(const upkeep::BikeToday& bike) {
    const auto record = bike.odometer().span();
    return record ? record->first : bike.today();
}

std::optional<double> expected_km_a_year(const Bike& bike) {
    const auto& written = bike.details.value.expected_distance_a_year;
    const auto distance = written ? distance_of(*written) : refuse("not said");
    return distance && *distance > Distance{} ? std::optional(distance->km()) : std::nullopt;
}

} // namespace

Riding::Riding(const upkeep::BikeToday& bike)
    : today_(bike.today())
    , last_reading_(bike.today())
    , days_(bike.bike(), first_day(bike), bike.today())
    , riders_(usage::learn_riders(usage::steps_of(day_ends(bike.odometer())), days_,
                                  expected_km_a_year(bike.bike())))
    , forecast_(riders_, days_, first_day(bike)) {
    const auto record = bike.odometer().span();
    if (!record) return;
    known_ = true;
    last_reading_ = record->last;
    last_km_ = record->at_last.km();
    forecast_ = usage::DistanceForecast(riders_, days_, last_reading_);
}

std::vector<double> Riding::shapes(const Piece& piece) const {
    const auto by_month = days_.by_month(piece.after, piece.last);
    std::vector<double> operating_days;
    for (const auto& pace : riders_.pace) {
        double sum = 0;
        for (std::size_t m = 0; m < by_month.size(); ++m)
            sum += by_month[m] * pace[m];
        operating_days.push_back(sum);
    }
    std::vector<double> shapes;
    for (const auto& rider : riders_.kept)
        shapes.push_back(rider.kappa * operating_days[rider.clock] / usage::days_of_year);
    return shapes;
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
