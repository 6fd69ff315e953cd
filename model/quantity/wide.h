// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>

namespace sumpbook {

/// 128 bits, for what stands between two exact numbers of 64 bits: products before they are divided, sums
/// before they are shown.
__extension__ using Wide = __int128;

/// numerator / denominator rounded to a whole number, a half to the even one; denominator above 0.
[[nodiscard]] constexpr Wide divide_half_even(Wide numerator, Wide denominator) {
    const Wide quotient = numerator / denominator;
    const Wide signed_rest = numerator % denominator;
    const Wide rest = signed_rest < 0 ? -signed_rest : signed_rest;
    const Wide to_next = denominator - rest; // compared instead of doubling the rest, which could overflow
    const bool away = rest > to_next || (rest == to_next && quotient % 2 != 0);
    if (!away) return quotient;
    return numerator < 0 ? quotient - 1 : quotient + 1;
}

/// The number itself, or the nearest one from -limit to limit.
[[nodiscard]] constexpr std::int64_t held_within(Wide number, std::int64_t limit) {
    if (number > limit) return limit;
    if (number < -Wide{limit}) return -limit;
    return static_cast<std::int64_t>(number);
}

/// Where sums of distances and volumes stop: half of 64 bits, so that what is computed next from such a sum
/// cannot overflow either (DESIGN).
inline constexpr std::int64_t sum_limit = std::int64_t{1} << 62;

} // namespace sumpbook
