// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/quantity/distance.h"

#include <algorithm>
#include <cmath>

namespace sumpbook {
namespace {

constexpr std::int64_t micrometres_in(DistanceUnit unit) {
    return unit == DistanceUnit::km ? Distance::um_per_km : Distance::um_per_mi;
}

} // namespace

Distance Distance::from_km(double km) {
    constexpr auto limit = static_cast<double>(sum_limit);
    return Distance(std::llround(std::clamp(km * double{um_per_km}, -limit, limit)));
}

double Distance::km() const { return in(DistanceUnit::km); }

double Distance::in(DistanceUnit unit) const {
    return static_cast<double>(micrometres_) / static_cast<double>(micrometres_in(unit));
}

Result<Distance> distance_of(const WrittenDistance& written) {
    const auto um = scaled_to_integer(written.number, micrometres_in(written.unit), 1);
    if (!um || *um > most_distance.micrometres() || *um < -most_distance.micrometres()) {
        return refuse("The distance is too large: at most 10 000 000 km.",
                      {.file = {}, .line = {}, .column = {}, .text = written.number.text()});
    }
    return Distance::from_micrometres(*um);
}

Decimal in_unit(Distance distance, DistanceUnit unit, int scale) {
    return decimal_ratio(distance.micrometres(), micrometres_in(unit), scale);
}

} // namespace sumpbook
