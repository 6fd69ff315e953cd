// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <cstdint>

namespace sumpbook::cost {

/// How often something breaks: repairs for each kilometre, Gamma(shape, rate) (numbers.md 5.4).
struct RepairRate {
    double shape = 0;
    double rate_km = 0;

    /// Before anything is known: half a repair in 10 000 km. DESIGN (numbers.md 5.4).
    static constexpr double start_events = 0.5;
    static constexpr double start_km = 10'000;
    /// After so many repairs in so many recorded kilometres.
    [[nodiscard]] static RepairRate after(std::size_t events, double exposure_km) {
        return {start_events + static_cast<double>(events), start_km + exposure_km};
    }

    // Of the number of repairs over a known distance: a negative binomial count.
    [[nodiscard]] double mean(double distance_km) const { return shape * distance_km / rate_km; }
    [[nodiscard]] double variance(double distance_km) const {
        return mean(distance_km) * (1 + distance_km / rate_km);
    }
    [[nodiscard]] double chance_of(std::int64_t count, double distance_km) const;
    /// The smallest count that is not passed with at least the chance p.
    [[nodiscard]] std::int64_t quantile(double distance_km, double p) const;
};

} // namespace sumpbook::cost
