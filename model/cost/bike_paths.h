// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/cost/draws.h"
#include "model/cost/simulation.h"

#include <optional>

namespace sumpbook::cost {

/// One amount of one path.
struct PathAmount {
    std::size_t category = 0;
    std::size_t piece = 0;
    std::int64_t minor = 0;
};

/// What happened to a bike in one path. Reused from path to path.
struct PathOutcome {
    std::vector<PathAmount> amounts;
    std::vector<std::uint64_t> jobs_done; ///< Added up, never cleared by a path.
    double distance_km = 0;               ///< From today to the horizon.
};

/// A bike made ready for many paths: all that is the same in each of them.
class BikePaths {
public:
    BikePaths(const BikeBasis& basis, const SimulationPlan& plan);

    /// What a path knows before it is known how much is ridden: the rider, and the distance of each piece
    /// for a rate of 1 km.
    struct Ridden {
        std::size_t rider = 0;
        std::vector<double> units;
    };
    [[nodiscard]] Ridden ridden(std::uint32_t path) const;
    /// The rate of the path's rider; `shared`: the uniform number all bikes of the path share.
    [[nodiscard]] double rate(std::uint32_t path, const Ridden& ridden, std::optional<double> shared) const;
    void run(std::uint32_t path, const Ridden& ridden, double rate, PathOutcome& outcome) const;

private:
    friend class PathRun;
    struct Purposes {
        std::uint32_t grid = hash32("grid");
        std::uint32_t rate = hash32("rate");
        std::uint32_t distance = hash32("distance");
        std::uint32_t repair_rate = hash32("repair-rate");
        std::uint32_t repairs = hash32("repairs");
        NumberedPurpose repair_cost{"repair-cost/"};
        std::vector<NumberedPurpose> jobs;
    };
    struct RunningInPieces {
        std::size_t category = 0;
        std::vector<double> minor_per_km; ///< By piece, at the prices of its middle.
    };
    [[nodiscard]] double uniform(std::uint32_t path, std::size_t piece, std::uint32_t purpose) const;
    [[nodiscard]] std::size_t category_index(const std::string& category) const;
    void prepare_running(const std::optional<RunningCost>& running);
    void prepare_dated();

    const BikeBasis& basis_;
    const SimulationPlan& plan_;
    Draws draws_;
    Purposes purposes_;
    std::vector<std::vector<double>> shapes_; ///< By piece and rider.
    std::vector<RunningInPieces> running_;
    std::vector<PathAmount> dated_;
    std::vector<std::size_t> job_categories_;
    std::vector<double> repair_factors_; ///< By piece.
    std::size_t repair_category_ = 0;
};

} // namespace sumpbook::cost
