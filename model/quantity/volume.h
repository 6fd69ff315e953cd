// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/quantity/wide.h"
#include "model/quantity/written.h"

#include <compare>
#include <cstdint>

namespace sumpbook {

/// An amount of liquid, exact: whole picolitres in 64 bits, so that litres and both gallons with up to
/// three decimals add without rounding. Range +-9.2 million litres; sums, differences and computed volumes
/// past +-4.6 million stay there instead of overflowing.
class Volume {
public:
    constexpr Volume() = default;
    [[nodiscard]] static constexpr Volume from_picolitres(std::int64_t pl) { return Volume(pl); }
    /// Nearest picolitre of a finite number; for computed volumes.
    [[nodiscard]] static Volume from_litres(double litres);

    [[nodiscard]] constexpr std::int64_t picolitres() const { return picolitres_; }
    [[nodiscard]] double litres() const;
    [[nodiscard]] double in(VolumeUnit unit) const;

    constexpr auto operator<=>(const Volume&) const = default;
    friend constexpr Volume operator+(Volume a, Volume b) {
        return held(Wide{a.picolitres_} + b.picolitres_);
    }
    friend constexpr Volume operator-(Volume a, Volume b) {
        return held(Wide{a.picolitres_} - b.picolitres_);
    }
    constexpr Volume& operator+=(Volume other) { return *this = *this + other; }

private:
    explicit constexpr Volume(std::int64_t pl)
        : picolitres_(pl) {}
    static constexpr Volume held(Wide pl) { return Volume(held_within(pl, sum_limit)); }
    std::int64_t picolitres_ = 0;
};

using WrittenVolume = Written<VolumeUnit>;

/// Picolitres in one unit: US gallon 231 cubic inches = 3.785411784 L, imperial gallon 4.54609 L, both exact.
[[nodiscard]] std::int64_t picolitres_in(VolumeUnit unit);
/// Largest volume that is accepted from outside, either sign: a million litres (DESIGN).
inline constexpr Volume most_volume = Volume::from_picolitres(1'000'000'000'000'000'000);
/// Refused past `most_volume`.
[[nodiscard]] Result<Volume> volume_of(const WrittenVolume& written);
[[nodiscard]] Decimal in_unit(Volume volume, VolumeUnit unit, int scale);

} // namespace sumpbook
