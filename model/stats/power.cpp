// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/stats/power.h"

#include <boost/math/distributions/non_central_t.hpp>
#include <boost/math/distributions/students_t.hpp>

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace sumpbook::stats {

double two_sample_power(std::size_t n, double shift_over_sd, double level) {
    if (n < 2) throw std::out_of_range("power of groups smaller than 2");
    const double freedom = 2 * static_cast<double>(n) - 2;
    const double critical =
        boost::math::quantile(boost::math::complement(boost::math::students_t(freedom), level / 2));
    const boost::math::non_central_t shifted(freedom,
                                             std::abs(shift_over_sd) * std::sqrt(static_cast<double>(n) / 2));
    return boost::math::cdf(boost::math::complement(shifted, critical)) +
           boost::math::cdf(shifted, -critical);
}

std::optional<std::size_t> group_size_needed(double shift_over_sd) {
    constexpr double certain = 8; // two values a group suffice; spares the far tail of the distribution
    const double size = std::min(std::abs(shift_over_sd), certain);
    // Power grows with n: halve the range.
    if (!(two_sample_power(largest_group, size) >= wanted_power)) return std::nullopt;
    std::size_t few = 1;
    std::size_t enough = largest_group;
    while (enough - few > 1) {
        const std::size_t middle = few + (enough - few) / 2;
        (two_sample_power(middle, size) >= wanted_power ? enough : few) = middle;
    }
    return enough;
}

} // namespace sumpbook::stats
