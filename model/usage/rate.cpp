// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/usage/rate.h"

namespace sumpbook::usage {

std::optional<PlainRate> plain_rate(const OdometerSeries& odometer) {
    const auto record = odometer.span();
    if (!record || record->days() < fewest_days_for_a_rate) return std::nullopt;
    return PlainRate{record->distance().km() / record->days(), record->first, record->last,
                     record->distance()};
}

} // namespace sumpbook::usage
