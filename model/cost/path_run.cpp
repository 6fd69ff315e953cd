// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/cost/path_run.h"

#include "model/cost/price_drift.h"
#include "model/stats/inverse.h"

#include <algorithm>
#include <cmath>

namespace sumpbook::cost {
namespace {

/// Far more than anything is done in a month; a plan that asks for more is cut here.
constexpr std::size_t most_jobs_in_a_piece = 500;

double drawn(const JobCost& cost, double u) {
    return std::exp(cost.mean_ln() + std::sqrt(cost.variance_ln()) * stats::normal_inverse(u));
}

} // namespace

PathRun::PathRun(const BikePaths& bike, std::uint32_t path, PathOutcome& outcome)
    : bike_(bike)
    , path_(path)
    , outcome_(outcome)
    , times_in_piece_(bike.basis_.jobs.size())
    , km_(bike.basis_.riding->last_km()) {
    next_.reserve(bike.basis_.jobs.size());
    for (const auto& job : bike.basis_.jobs)
        next_.push_back(job.first);
    const auto& rate = bike.basis_.repairs.rate;
    if (bike.basis_.repairs.cost)
        repairs_per_km_ =
            stats::gamma_inverse(rate.shape, bike.uniform(path, 0, bike.purposes_.repair_rate)) /
            rate.rate_km;
}

void PathRun::add(std::size_t category, std::size_t piece, double minor) {
    // Past the largest amount that is accepted anywhere no sum would be a sum any more.
    const double held = std::min(minor, static_cast<double>(most_minor));
    outcome_.amounts.push_back({category, piece, std::llrint(held)});
}

bool PathRun::due_today(std::size_t job) const {
    const DuePoint& next = next_[job];
    const bool reached = (next.km && *next.km <= km_) || (next.day && *next.day <= 0);
    return reached && bike_.basis_.jobs[job].not_before_day <= 0;
}

void PathRun::ride_to_today(double distance_km) {
    km_ += distance_km;
    for (std::size_t job = 0; job < next_.size(); ++job) {
        if (due_today(job)) do_job(job, 0, km_, 0);
    }
}

void PathRun::ride(std::size_t piece, double distance_km) {
    const Piece& days = bike_.plan_.pieces[piece];
    do_jobs({piece, days.from_day, days.to_day, km_, distance_km});
    km_ += distance_km;
    outcome_.distance_km += distance_km;
    run_costs(piece, distance_km);
    repair(piece, distance_km);
}

std::optional<double> PathRun::due_day(std::size_t job, const Leg& leg, double now) const {
    const DuePoint& next = next_[job];
    std::optional<double> day;
    if (next.day && *next.day <= leg.to_day) day = *next.day;
    if (next.km && *next.km <= leg.from_km + leg.distance_km && leg.distance_km > 0) {
        const double part = std::max(0.0, (*next.km - leg.from_km) / leg.distance_km);
        const double crossed = leg.from_day + part * (leg.to_day - leg.from_day);
        day = std::min(day.value_or(crossed), crossed);
    }
    if (!day) return std::nullopt;
    const double held = std::max({*day, now, bike_.basis_.jobs[job].not_before_day});
    return held <= leg.to_day ? std::optional(held) : std::nullopt;
}

void PathRun::do_jobs(const Leg& leg) {
    std::ranges::fill(times_in_piece_, 0);
    double now = leg.from_day;
    for (std::size_t done = 0; done < most_jobs_in_a_piece; ++done) {
        std::optional<std::size_t> first;
        double first_day = 0;
        for (std::size_t job = 0; job < next_.size(); ++job) {
            const auto day = due_day(job, leg, now);
            if (!day || (first && *day >= first_day)) continue;
            first = job;
            first_day = *day;
        }
        if (!first) return;
        now = first_day;
        do_job(*first, leg.piece, leg.km_at(now), now);
    }
}

void PathRun::do_job(std::size_t job, std::size_t piece, double km, double day) {
    const auto& jobs = bike_.basis_.jobs;
    const double whole_day = std::ceil(day);
    ++outcome_.jobs_done[job];
    ++times_in_piece_[job];
    if (const auto& cost = jobs[job].cost) {
        const auto purpose = bike_.purposes_.jobs[job].at(times_in_piece_[job]);
        const double minor = drawn(*cost, bike_.uniform(path_, piece, purpose));
        add(bike_.job_categories_[job], piece,
            minor * price_factor(jobs[job].drift_percent_a_year, whole_day));
    }
    const auto at_km = bike_.basis_.riding->known() ? std::optional(km) : std::nullopt;
    for (const std::size_t reset : jobs[job].resets)
        next_[reset] = due_after(jobs[reset], *bike_.basis_.bike, at_km, whole_day);
}

void PathRun::run_costs(std::size_t piece, double distance_km) {
    for (const auto& running : bike_.running_)
        add(running.category, piece, distance_km * running.minor_per_km[piece]);
}

void PathRun::repair(std::size_t piece, double distance_km) {
    const auto& cost = bike_.basis_.repairs.cost;
    if (!cost) return;
    const auto count = stats::poisson_inverse(repairs_per_km_ * distance_km,
                                              bike_.uniform(path_, piece, bike_.purposes_.repairs));
    for (std::int64_t number = 1; number <= count; ++number) {
        const auto purpose = bike_.purposes_.repair_cost.at(static_cast<std::size_t>(number));
        add(bike_.repair_category_, piece,
            drawn(*cost, bike_.uniform(path_, piece, purpose)) * bike_.repair_factors_[piece]);
    }
}

} // namespace sumpbook::cost
