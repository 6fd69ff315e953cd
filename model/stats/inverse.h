// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>

namespace sumpbook::stats {

// The values that are not passed with chance p, 0 < p < 1: one uniform number gives one draw.

/// Of Gamma(shape, rate 1). A shape of 0 or less is 0 for certain.
[[nodiscard]] double gamma_inverse(double shape, double p);
[[nodiscard]] double normal_inverse(double p);
/// Of Student's t; degrees of freedom above 0.
[[nodiscard]] double student_inverse(double degrees_of_freedom, double p);
/// The smallest count whose chance of not being passed is at least p. A mean of 0 or less is 0 for certain.
[[nodiscard]] std::int64_t poisson_inverse(double mean, double p);

} // namespace sumpbook::stats
