// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/cost/simulation.h"

#include "model/cost/bike_paths.h"

#include <algorithm>
#include <thread>

namespace sumpbook::cost {
namespace {

using Sums = std::vector<std::vector<std::int64_t>>;

/// Which groups an amount counts in.
class GroupIndex {
public:
    GroupIndex(const SimulationPlan& plan, std::size_t bikes)
        : categories_(plan.categories.size())
        , pieces_(plan.pieces.size())
        , groups_(bikes * categories_ * pieces_) {
        for (std::size_t bike = 0; bike < bikes; ++bike) {
            for (std::size_t category = 0; category < categories_; ++category) {
                for (std::size_t piece = 0; piece < pieces_; ++piece)
                    fill(plan, bike, category, piece);
            }
        }
    }
    [[nodiscard]] const std::vector<std::size_t>& of(std::size_t bike, const PathAmount& amount) const {
        return groups_[(bike * categories_ + amount.category) * pieces_ + amount.piece];
    }

private:
    void fill(const SimulationPlan& plan, std::size_t bike, std::size_t category, std::size_t piece) {
        auto& groups = groups_[(bike * categories_ + category) * pieces_ + piece];
        for (std::size_t i = 0; i < plan.groups.size(); ++i) {
            const auto& group = plan.groups[i];
            const bool inside = group.first_piece <= piece && piece <= group.last_piece;
            if (inside && group.bike.value_or(bike) == bike && group.category.value_or(category) == category)
                groups.push_back(i);
        }
    }

    std::size_t categories_, pieces_;
    std::vector<std::vector<std::size_t>> groups_;
};

/// One thread's share of the paths.
class Worker {
public:
    Worker(const std::vector<BikePaths>& bikes, const SimulationPlan& plan, const GroupIndex& index,
           SimulationResult& result)
        : bikes_(bikes)
        , plan_(plan)
        , index_(index)
        , result_(result)
        , outcomes_(bikes.size())
        , together_(bikes.size()) {}

    void run(std::uint32_t from, std::uint32_t to) {
        for (std::uint32_t path = from; path < to; ++path) {
            const double shared = draws_.uniform(all_bikes_, path, 0, rate_);
            for (std::size_t bike = 0; bike < bikes_.size(); ++bike)
                run(path, bike, shared);
        }
    }
    [[nodiscard]] const PathOutcome& outcome(std::size_t bike) const { return outcomes_[bike]; }

private:
    void run(std::uint32_t path, std::size_t number, double shared) {
        const BikePaths& bike = bikes_[number];
        const auto ridden = bike.ridden(path);
        bike.run(path, ridden, bike.rate(path, ridden, {}), outcomes_[number]);
        sum_up(path, number, outcomes_[number], result_.sums);
        result_.distances_km[path][number] = outcomes_[number].distance_km;
        if (result_.sums_together.empty()) return;
        bike.run(path, ridden, bike.rate(path, ridden, shared), together_[number]);
        sum_up(path, number, together_[number], result_.sums_together);
    }
    void sum_up(std::uint32_t path, std::size_t bike, const PathOutcome& outcome, Sums& sums) const {
        for (const auto& amount : outcome.amounts) {
            for (const std::size_t group : index_.of(bike, amount))
                sums[group][path] += amount.minor;
        }
    }

    const std::vector<BikePaths>& bikes_;
    const SimulationPlan& plan_;
    const GroupIndex& index_;
    SimulationResult& result_;
    std::vector<PathOutcome> outcomes_, together_;
    Draws draws_{plan_.seed};
    std::uint32_t all_bikes_ = hash32("all bikes");
    std::uint32_t rate_ = hash32("rate");
};

void run_all(std::vector<Worker>& workers, std::uint32_t paths) {
    const auto count = static_cast<std::uint32_t>(workers.size());
    std::vector<std::jthread> threads;
    for (std::uint32_t i = 1; i < count; ++i) {
        const auto from = static_cast<std::uint32_t>(std::uint64_t{paths} * i / count);
        const auto to = static_cast<std::uint32_t>(std::uint64_t{paths} * (i + 1) / count);
        threads.emplace_back([&worker = workers[i], from, to] { worker.run(from, to); });
    }
    workers.front().run(0, paths / count);
}

} // namespace

SimulationResult simulate(const std::vector<BikeBasis>& bikes, const SimulationPlan& plan) {
    SimulationResult result;
    result.sums.assign(plan.groups.size(), std::vector<std::int64_t>(plan.paths));
    if (bikes.size() > 1) result.sums_together = result.sums;
    result.distances_km.assign(plan.paths, std::vector<double>(bikes.size()));
    std::vector<BikePaths> ready;
    for (const auto& bike : bikes)
        ready.emplace_back(bike, plan);
    const GroupIndex index(plan, bikes.size());
    std::vector<Worker> workers(std::max(1U, plan.threads), Worker(ready, plan, index, result));
    run_all(workers, plan.paths);
    for (std::size_t bike = 0; bike < bikes.size(); ++bike) {
        auto& done = result.jobs_done.emplace_back(bikes[bike].jobs.size());
        for (const auto& worker : workers) {
            for (std::size_t job = 0; job < worker.outcome(bike).jobs_done.size(); ++job)
                done[job] += worker.outcome(bike).jobs_done[job];
        }
    }
    return result;
}

} // namespace sumpbook::cost
