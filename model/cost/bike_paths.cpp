// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/cost/bike_paths.h"

#include "model/cost/path_run.h"
#include "model/cost/price_drift.h"
#include "model/stats/inverse.h"

#include <algorithm>

namespace sumpbook::cost {

BikePaths::BikePaths(const BikeBasis& basis, const SimulationPlan& plan)
    : basis_(basis)
    , plan_(plan)
    , draws_(plan.seed) {
    for (const auto& piece : plan.pieces)
        shapes_.push_back(basis.riding->shapes(piece));
    shapes_.front() = basis.riding->shapes(
        {.after = basis.riding->last_reading(), .last = basis.bike->today(), .from_day = 0, .to_day = 0});
    for (const auto& job : basis.jobs) {
        purposes_.jobs.emplace_back("job/" + job.item.slug + "/");
        job_categories_.push_back(category_index(job.category));
    }
    prepare_running(basis.fuel);
    prepare_running(basis.oil);
    prepare_dated();
    repair_category_ = category_index(basis.repairs.category);
    for (const auto& piece : plan.pieces)
        repair_factors_.push_back(price_factor(basis.repairs.drift_percent_a_year, piece.middle_day()));
}

std::size_t BikePaths::category_index(const std::string& category) const {
    return static_cast<std::size_t>(std::ranges::find(plan_.categories, category) - plan_.categories.begin());
}

void BikePaths::prepare_running(const std::optional<RunningCost>& running) {
    if (!running) return;
    RunningInPieces prepared{category_index(running->category), {}};
    for (const auto& piece : plan_.pieces) {
        const double factor = price_factor(running->drift_percent_a_year, piece.middle_day());
        prepared.minor_per_km.push_back(running->minor_per_km() * factor);
    }
    running_.push_back(std::move(prepared));
}

void BikePaths::prepare_dated() {
    for (const auto& cost : basis_.dated) {
        const auto piece = std::ranges::find_if(
            plan_.pieces, [&](const Piece& candidate) { return cost.date <= candidate.last; });
        if (piece == plan_.pieces.end()) continue;
        dated_.push_back({category_index(cost.category),
                          static_cast<std::size_t>(piece - plan_.pieces.begin()), cost.minor});
    }
}

double BikePaths::uniform(std::uint32_t path, std::size_t piece, std::uint32_t purpose) const {
    return draws_.uniform(basis_.draw_id, path, static_cast<std::uint32_t>(piece), purpose);
}

BikePaths::Ridden BikePaths::ridden(std::uint32_t path) const {
    const auto& riders = basis_.riding->riders().kept;
    const double u = uniform(path, 0, purposes_.grid);
    Ridden ridden;
    double sum = 0;
    for (ridden.rider = 0; ridden.rider + 1 < riders.size(); ++ridden.rider) {
        sum += riders[ridden.rider].weight;
        if (sum > u) break;
    }
    for (std::size_t piece = 0; piece < shapes_.size(); ++piece) {
        const double shape = shapes_[piece][ridden.rider];
        ridden.units.push_back(
            shape <= 0 ? 0 : stats::gamma_inverse(shape, uniform(path, piece, purposes_.distance)));
    }
    return ridden;
}

double BikePaths::rate(std::uint32_t path, const Ridden& ridden, std::optional<double> shared) const {
    const auto& rider = basis_.riding->riders().kept[ridden.rider];
    const double u = shared ? *shared : uniform(path, 0, purposes_.rate);
    return stats::gamma_inverse(rider.belief.a, u) / rider.belief.b_km;
}

void BikePaths::run(std::uint32_t path, const Ridden& ridden, double rate, PathOutcome& outcome) const {
    outcome.amounts = dated_;
    outcome.jobs_done.resize(basis_.jobs.size());
    outcome.distance_km = 0;
    PathRun run(*this, path, outcome);
    run.ride_to_today(ridden.units.front() / rate);
    for (std::size_t piece = 1; piece < ridden.units.size(); ++piece)
        run.ride(piece, ridden.units[piece] / rate);
}

} // namespace sumpbook::cost
