// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/cost/due_point.h"

#include <algorithm>

namespace sumpbook::cost {
namespace {

std::optional<double> smaller(const std::optional<double>& a, const std::optional<double>& b) {
    return a && b ? std::min(a, b) : a ? a : b;
}

} // namespace

DuePoint earlier(const DuePoint& a, const DuePoint& b) {
    return {.km = smaller(a.km, b.km), .day = smaller(a.day, b.day)};
}

DuePoint due_point(const upkeep::NextLimits& limits, const upkeep::BikeToday& bike) {
    DuePoint point;
    if (limits.distance) point.km = limits.distance->at.km();
    if (limits.hours) point.km = smaller(point.km, bike.hours().distance_at(limits.hours->at_hours).km());
    if (limits.date) point.day = days_between(bike.today(), limits.date->at);
    if (!bike.odometer().span()) point.km.reset();
    return point;
}

} // namespace sumpbook::cost
