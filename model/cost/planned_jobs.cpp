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

/// Slugs and slots that are money of another category than upkeep, before a bill says so.
std::string usual_category(const std::string& slug) {
    constexpr std::array<std::pair<std::string_view, std::string_view>, 7> usual{
        {{"engine-oil", "oil"},
         {"tyres", "tyres"},
         {"front-tyre", "tyres"},
         {"rear-tyre", "tyres"},
         {"insurance", "insurance"},
         {"road-tax", "tax"},
         {"inspection", "inspection"}}};
    for (const auto& [known, category] : usual) {
        if (known == slug) return std::string(category);
    }
    return "upkeep";
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

void price(PlannedJob& job, const JobBills& bills, const GarageSettings& settings, const Date& today) {
    const PlanItem& item = job.item;
    job.bills = bills.of(item.slug);
    job.category =
        branch_of(settings, job.bills.empty() ? usual_category(item.slug) : job.bills.back().category);
    job.drift_percent_a_year = drift_percent_a_year(settings, job.category);
    if (item.estimate) job.estimate = converted(*item.estimate, settings.currency, today, settings);
    std::optional<double> ln_estimate;
    if (job.estimate && job.estimate->minor > 0)
        ln_estimate = std::log(static_cast<double>(job.estimate->minor));
    job.cost = JobCost::from(ln_estimate, ln_costs(job.bills));
    if (job.cost || job.estimate) return;
    const auto apart = bills.without_rate.find(item.slug);
    if (item.estimate)
        job.without_rate = item.estimate;
    else if (apart != bills.without_rate.end())
        job.without_rate = apart->second;
}

bool comes_by_distance(const PlanItem& item) {
    const Limits& limits = item.repeat.any() ? item.repeat : item.first;
    return limits.distance || limits.hours;
}

void tell_without_day(const PlannedJob& job, const upkeep::BikeToday& bike,
                      std::vector<NotPriced>& not_priced) {
    if (job.first.any() || job.is_free()) return;
    const bool unread = !bike.odometer().span() && comes_by_distance(job.item);
    not_priced.push_back(
        {bike.name(), job.item.label, unread ? NotPricedBecause::no_reading : NotPricedBecause::no_day, {}});
}

void link_resets(std::vector<PlannedJob>& jobs, const Bike& bike) {
    for (std::size_t i = 0; i < jobs.size(); ++i) {
        Entry named;
        named.does = {jobs[i].item.slug};
        const auto done = upkeep::slugs_satisfied(named, bike.plan);
        for (std::size_t other = 0; other < jobs.size(); ++other) {
            if (done.contains(jobs[other].item.slug)) jobs[i].resets.push_back(other);
        }
    }
}

/// The part an item renews or sets right, taken out of the list.
std::optional<WornPart> take_part(const PlanItem& item, std::vector<WornPart>& parts) {
    const auto part = std::ranges::find_if(parts, [&](const WornPart& candidate) {
        return candidate.set_right_by == item.slug || candidate.set_right_by == upkeep::slot_of(item);
    });
    if (part == parts.end()) return std::nullopt;
    auto taken = std::move(*part);
    parts.erase(part);
    return taken;
}

/// Absent where it is done once and over.
std::optional<PlannedJob> job_of(const PlanItem& item, const upkeep::BikeToday& bike,
                                 std::vector<WornPart>& parts) {
    const auto history = upkeep::history_of(item, bike);
    const auto part = take_part(item, parts);
    const bool over = !history.empty() && !item.repeat.any();
    if (over && !part) return std::nullopt;
    PlannedJob job;
    job.item = item;
    job.grid_start = grid_start(bike, history);
    if (!over) job.first = due_point(upkeep::standing_limits(item, bike, history), bike);
    if (part) {
        job.first = earlier(job.first, part->first);
        job.life = part->life;
    }
    if (item.in_force_from) job.not_before_day = std::max(0, days_between(bike.today(), *item.in_force_from));
    return job;
}

/// Of a part that no item of the plan renews.
PlannedJob job_of(const WornPart& part) {
    PlannedJob job;
    job.item.slug = part.set_right_by;
    job.item.label = words_of_slot(part.set_right_by);
    job.first = part.first;
    job.life = part.life;
    return job;
}

} // namespace

std::vector<PlannedJob> planned_jobs(const upkeep::BikeToday& bike, const GarageSettings& settings,
                                     std::vector<NotPriced>& not_priced) {
    auto parts = worn_parts(bike);
    std::vector<PlannedJob> jobs;
    for (const auto& planned : bike.bike().plan) {
        if (auto job = job_of(planned.value, bike, parts)) jobs.push_back(std::move(*job));
    }
    std::set<std::string> renewed;
    for (const auto& part : parts) {
        renewed.insert(part.set_right_by);
        jobs.push_back(job_of(part));
    }
    const auto bills = job_bills(bike.bike(), settings, bike.today(), renewed);
    for (auto& job : jobs) {
        price(job, bills, settings, bike.today());
        tell_without_day(job, bike, not_priced);
    }
    std::ranges::stable_sort(jobs, std::greater{},
                             [&](const PlannedJob& job) { return count_included(job.item, bike.bike()); });
    link_resets(jobs, bike.bike());
    return jobs;
}

DuePoint due_after(const PlannedJob& job, const upkeep::BikeToday& bike, std::optional<double> at_km,
                   double on_day) {
    upkeep::Moment done;
    done.date = plus_days(bike.today(), static_cast<int>(std::ceil(on_day)));
    if (at_km) {
        done.distance = Distance::from_km(*at_km);
        if (job.item.repeat.hours) done.engine_hours = bike.hours().hours_at(*done.distance);
    }
    DuePoint worn;
    if (job.life.km && at_km) worn.km = *at_km + *job.life.km;
    if (job.life.months) worn.day = days_between(bike.today(), plus_months(*done.date, *job.life.months));
    return earlier(due_point(upkeep::limits_after(job.item, job.grid_start, done), bike), worn);
}

} // namespace sumpbook::cost
