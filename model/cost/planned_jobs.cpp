// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/cost/planned_jobs.h"

#include "model/cost/exchange.h"
#include "model/cost/price_drift.h"
#include "model/cost/spent.h"
#include "model/upkeep/plan_due.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <set>

namespace sumpbook::cost {
namespace {

/// Starter slugs that are money of another category than upkeep, before a bill says so.
std::string usual_category(const std::string& slug) {
    constexpr std::array<std::pair<std::string_view, std::string_view>, 5> usual{
        {{"engine-oil", "oil"},
         {"tyres", "tyres"},
         {"insurance", "insurance"},
         {"road-tax", "tax"},
         {"inspection", "inspection"}}};
    for (const auto& [known, category] : usual) {
        if (known == slug) return std::string(category);
    }
    return "upkeep";
}

DuePoint due_point(const upkeep::NextLimits& limits, const upkeep::BikeToday& bike) {
    DuePoint point;
    if (limits.distance) point.km = limits.distance->at.km();
    if (limits.hours) {
        const double km = bike.hours().distance_at(limits.hours->at_hours).km();
        point.km = std::min(point.km.value_or(km), km);
    }
    if (limits.date) point.day = days_between(bike.today(), limits.date->at);
    // Without a reading nothing crosses a distance.
    if (!bike.odometer().span()) point.km.reset();
    return point;
}

/// Where a grid starts: going into service; without that day the first job's.
upkeep::Moment grid_start(const upkeep::BikeToday& bike, const std::vector<upkeep::DoneAndTimed>& history) {
    upkeep::Moment start = bike.in_service();
    if (!start.date && !history.empty()) start.date = history.front().done.at.date;
    return start;
}

std::size_t count_included(const PlanItem& item, const Bike& bike) {
    Entry named;
    named.does = {item.slug};
    return upkeep::slugs_satisfied(named, bike.plan).size();
}

void price(PlannedJob& job, const GarageSettings& settings, const Date& today) {
    job.category =
        branch_of(settings, job.bills.empty() ? usual_category(job.item->slug) : job.bills.back().category);
    job.drift_percent_a_year = drift_percent_a_year(settings, job.category);
    if (job.item->estimate) job.estimate = converted(*job.item->estimate, settings.currency, today, settings);
    std::optional<double> ln_estimate;
    if (job.estimate && job.estimate->minor > 0)
        ln_estimate = std::log(static_cast<double>(job.estimate->minor));
    job.cost = JobCost::from(ln_estimate, ln_costs(job.bills));
}

/// An estimate of nothing is nothing: such a job costs 0 and is no gap.
bool is_free(const PlannedJob& job) { return job.estimate && job.estimate->minor <= 0 && job.bills.empty(); }

void tell_gaps(const PlannedJob& job, const std::string& bike, std::vector<NotPriced>& not_priced) {
    const auto tell = [&](NotPricedBecause reason, std::string amount) {
        not_priced.push_back({bike, job.item->label, reason, std::move(amount)});
    };
    if (job.item->estimate && !job.estimate) tell(NotPricedBecause::no_rate, text_of(*job.item->estimate));
    if (!job.first.any() && !is_free(job)) tell(NotPricedBecause::no_day, {});
}

void link_resets(std::vector<PlannedJob>& jobs, const Bike& bike) {
    for (std::size_t i = 0; i < jobs.size(); ++i) {
        Entry named;
        named.does = {jobs[i].item->slug};
        const auto done = upkeep::slugs_satisfied(named, bike.plan);
        for (std::size_t other = 0; other < jobs.size(); ++other) {
            if (done.contains(jobs[other].item->slug)) jobs[i].resets.push_back(other);
        }
    }
}

} // namespace

std::vector<PlannedJob> planned_jobs(const upkeep::BikeToday& bike, const GarageSettings& settings,
                                     std::vector<NotPriced>& not_priced) {
    const auto bills = job_bills(bike.bike(), settings, bike.today());
    std::vector<PlannedJob> jobs;
    for (const auto& planned : bike.bike().plan) {
        const PlanItem& item = planned.value;
        const auto history = upkeep::history_of(item, bike);
        if (!history.empty() && !item.repeat.any()) continue;
        PlannedJob job;
        job.item = &item;
        job.grid_start = grid_start(bike, history);
        job.first = due_point(upkeep::standing_limits(item, bike, history), bike);
        if (item.in_force_from)
            job.not_before_day = std::max(0, days_between(bike.today(), *item.in_force_from));
        if (const auto own = bills.find(item.slug); own != bills.end()) job.bills = own->second;
        price(job, settings, bike.today());
        tell_gaps(job, bike.name(), not_priced);
        jobs.push_back(std::move(job));
    }
    std::ranges::stable_sort(jobs, std::greater{},
                             [&](const PlannedJob& job) { return count_included(*job.item, bike.bike()); });
    link_resets(jobs, bike.bike());
    return jobs;
}

DuePoint due_after(const PlannedJob& job, const upkeep::BikeToday& bike, std::optional<double> at_km,
                   double on_day) {
    upkeep::Moment done;
    done.date = plus_days(bike.today(), static_cast<int>(std::ceil(on_day)));
    if (at_km) {
        done.distance = Distance::from_km(*at_km);
        if (job.item->repeat.hours) done.engine_hours = bike.hours().hours_at(*done.distance);
    }
    return due_point(upkeep::limits_after(*job.item, job.grid_start, done), bike);
}

} // namespace sumpbook::cost
