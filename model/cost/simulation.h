// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/cost/bike_basis.h"
#include "model/cost/forecast_groups.h"

#include <cstdint>
#include <string>
#include <vector>

namespace sumpbook::cost {

/// How a forecast is simulated. The answer depends on the seed and the number of paths, never on the threads.
struct SimulationPlan {
    std::vector<Piece> pieces; ///< From the end of the record to the horizon; piece 0 ends today.
    std::vector<std::string> categories;
    std::vector<ForecastGroup> groups;
    std::uint32_t paths = 0;
    std::uint64_t seed = 0;
    unsigned threads = 1;
};

/// What the paths came to, in whole minor units; each amount is rounded half to even when it is made.
struct SimulationResult {
    /// By group, then by path: every bike's riding by itself.
    std::vector<std::vector<std::int64_t>> sums;
    /// The same with one shared draw a path for how much all bikes are ridden; empty with one bike.
    std::vector<std::vector<std::int64_t>> sums_together;
    /// By bike and job: how often it fell due in all paths up to the horizon.
    std::vector<std::vector<std::uint64_t>> jobs_done;
    /// By path and bike: the distance from today to the horizon.
    std::vector<std::vector<double>> distances_km;
};

/// Numbers.md 5.1 to 5.5 and 5.7.
[[nodiscard]] SimulationResult simulate(const std::vector<BikeBasis>& bikes, const SimulationPlan& plan);

} // namespace sumpbook::cost
