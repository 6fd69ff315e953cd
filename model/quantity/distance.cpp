// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/quantity/distance.h"

#include <cmath>

namespace sumpbook {
namespace {

constexpr std::int64_t micrometres_in(DistanceUnit unit) {
    return unit == DistanceUnit::km ? Distance::um_per_km : Distance::um_per_mi;
}

} // namespace

Distance Distance::from_km(double km) { return Distance(std::llround(km * double{um_per_km})); }
double Distance::km() const { return in(DistanceUnit::km); }

double Distance::in(DistanceUnit unit) const {
    return static_cast<double>(micrometres_) / static_cast<double>(micrometres_in(unit));
}

Result<Distance> distance_of(const WrittenDistance& written) {
    return scaled_to_integer(written.number, micrometres_in(written.unit), 1)
        .map(&Distance::from_micrometres);
}

Decimal in_unit(Distance distance, DistanceUnit unit, int scale) {
    return decimal_ratio(distance.micrometres(), micrometres_in(unit), scale);
}

} // namespace sumpbook
