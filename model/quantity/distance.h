// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/quantity/wide.h"
#include "model/quantity/written.h"

#include <compare>
#include <cstdint>

namespace sumpbook {

/// A length of road, exact: whole micrometres in 64 bits, so that kilometres and miles with up to
/// three decimals convert and add without rounding (1 mi = 1 609.344 m). Range +-9.2e9 km; a sum, a
/// difference and a number of whole or computed kilometres past +-4.6e9 km stay there instead of overflowing.
class Distance {
public:
    constexpr Distance() = default;
    [[nodiscard]] static constexpr Distance from_micrometres(std::int64_t um) { return Distance(um); }
    [[nodiscard]] static constexpr Distance from_whole_km(std::int64_t km) {
        return held(Wide{km} * um_per_km);
    }
    /// Nearest micrometre of a finite number; for computed distances.
    [[nodiscard]] static Distance from_km(double km);

    [[nodiscard]] constexpr std::int64_t micrometres() const { return micrometres_; }
    [[nodiscard]] double km() const;
    [[nodiscard]] double in(DistanceUnit unit) const;

    constexpr auto operator<=>(const Distance&) const = default;
    friend constexpr Distance operator+(Distance a, Distance b) {
        return held(Wide{a.micrometres_} + b.micrometres_);
    }
    friend constexpr Distance operator-(Distance a, Distance b) {
        return held(Wide{a.micrometres_} - b.micrometres_);
    }
    constexpr Distance operator-() const { return held(-Wide{micrometres_}); }
    constexpr Distance& operator+=(Distance other) { return *this = *this + other; }

    static constexpr std::int64_t um_per_km = 1'000'000'000;
    static constexpr std::int64_t um_per_mi = 1'609'344'000; ///< 1959 international yard and pound agreement.

private:
    explicit constexpr Distance(std::int64_t um)
        : micrometres_(um) {}
    static constexpr Distance held(Wide um) { return Distance(held_within(um, sum_limit)); }
    std::int64_t micrometres_ = 0;
};

/// "12 345 km" as written on the dial or typed.
using WrittenDistance = Written<DistanceUnit>;

/// Longest distance that is accepted from outside, either sign (DESIGN).
inline constexpr Distance most_distance = Distance::from_whole_km(10'000'000);

/// Exact where the number has at most three decimals, else to the nearest micrometre. Refused past
/// `most_distance`.
[[nodiscard]] Result<Distance> distance_of(const WrittenDistance& written);
/// The distance as a decimal in `unit`, rounded half to even to `scale` digits.
[[nodiscard]] Decimal in_unit(Distance distance, DistanceUnit unit, int scale);

} // namespace sumpbook
