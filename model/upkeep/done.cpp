// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/upkeep/done.h"

#include <algorithm>
#include <array>
#include <utility>

namespace sumpbook::upkeep {
namespace {

using Plan = std::vector<Versioned<PlanItem>>;

/// Compartments and slots of starter slugs whose item states none.
constexpr std::array<std::pair<std::string_view, std::string_view>, 5> usual_compartments{
    {{"engine-oil", "engine"},
     {"oil-filter", "engine"},
     {"final-drive-oil", "final-drive"},
     {"fork-oil", "fork-leg"},
     {"coolant", "coolant"}}};
constexpr std::array<std::pair<std::string_view, std::string_view>, 2> usual_slots{
    {{"battery", "battery"}, {"chain-set", "chain-set"}}};

std::string_view usual(const auto& table, std::string_view slug) {
    for (const auto& [known, place] : table) {
        if (known == slug) return place;
    }
    return {};
}

std::string_view compartment_of(const PlanItem& item) {
    return item.compartment ? std::string_view(*item.compartment) : usual(usual_compartments, item.slug);
}

/// What is in a compartment, as against a part of the engine that stands in the plan with its compartment.
bool is_a_fluid(const PlanItem& item) {
    return item.slug.ends_with("oil") || item.slug.ends_with("fluid") || item.slug == "coolant";
}

bool oil_change_satisfies(const OilChange& change, const PlanItem& item) {
    if (compartment_of(item) != change.compartment) return false;
    if (item.slug.ends_with("oil-filter")) return change.filter_changed.value_or(false);
    return is_a_fluid(item);
}

/// The slug itself and everything its items include, followed to the end.
void reach(const std::string& slug, const Plan& plan, std::set<std::string>& reached) {
    if (!reached.insert(slug).second) return;
    for (const auto& item : plan) {
        if (item.value.slug != slug) continue;
        for (const auto& included : item.value.includes)
            reach(included, plan, reached);
    }
}

bool by_its_kind(const Entry& entry, const PlanItem& item) {
    if (const auto* change = std::get_if<OilChange>(&entry.body)) return oil_change_satisfies(*change, item);
    if (const auto* fit = std::get_if<Fit>(&entry.body)) return slot_of(item) == fit->slot;
    return false;
}

Done done_by(const LogEntry& entry, const usage::OdometerSeries& odometer, const usage::EngineHours& hours) {
    Done done;
    done.at.date = entry.value.date;
    done.at.distance = odometer.at_entry(entry);
    done.distance_estimated = done.at.distance && !odometer.of_entry(entry.id);
    done.at.engine_hours = hours.hours_of_entry(entry.id);
    if (!done.at.engine_hours && done.at.distance) done.at.engine_hours = hours.hours_at(*done.at.distance);
    done.entry_id = entry.id;
    done.evidence = entry.value.evidence;
    return done;
}

Done done_before_the_record(const Baseline& baseline, const usage::OdometerSeries& odometer,
                            const usage::EngineHours& hours) {
    Done done;
    done.baseline = true;
    done.evidence = baseline.evidence;
    done.at.date = baseline.date;
    if (baseline.odometer)
        done.at.distance = odometer.dials().true_distance(*baseline.odometer, baseline.date);
    if (!done.at.distance) {
        done.at.distance = odometer.position(baseline.date);
        done.distance_estimated = done.at.distance.has_value();
    }
    if (baseline.hours)
        done.at.engine_hours = baseline.hours->to_double();
    else if (done.at.distance)
        done.at.engine_hours = hours.hours_at(*done.at.distance);
    return done;
}

/// Entries of one day are one visit: the job, the oil and the filter that went with it. The first counts,
/// unless only a later one has a reading.
void join_days(std::vector<Done>& times) {
    std::vector<Done> joined;
    for (auto& done : times) {
        const bool same_day = !joined.empty() && joined.back().at.date == done.at.date;
        if (!same_day)
            joined.push_back(std::move(done));
        else if (joined.back().distance_estimated && !done.distance_estimated && done.at.distance)
            joined.back() = std::move(done);
    }
    times = std::move(joined);
}

} // namespace

std::string_view slot_of(const PlanItem& item) {
    return item.slot ? std::string_view(*item.slot) : usual(usual_slots, item.slug);
}

std::set<std::string> slugs_satisfied(const Entry& entry, const Plan& plan) {
    std::set<std::string> reached;
    for (const auto& slug : entry.does)
        reach(slug, plan, reached);
    if (!std::holds_alternative<OilChange>(entry.body) && !std::holds_alternative<Fit>(entry.body))
        return reached;
    for (const auto& item : plan) {
        if (by_its_kind(entry, item.value)) reach(item.value.slug, plan, reached);
    }
    return reached;
}

std::vector<Done> times_done(const PlanItem& item, const Bike& bike, const usage::OdometerSeries& odometer,
                             const usage::EngineHours& hours) {
    std::vector<Done> times;
    for (const auto& baseline : bike.baselines) {
        if (baseline.value.slug == item.slug)
            times.push_back(done_before_the_record(baseline.value, odometer, hours));
    }
    for (const auto& entry : bike.log) {
        if (slugs_satisfied(entry.value, bike.plan).contains(item.slug))
            times.push_back(done_by(entry, odometer, hours));
    }
    std::ranges::stable_sort(times, {}, [](const Done& done) { return *done.at.date; });
    join_days(times);
    return times;
}

Moment in_service(const Bike& bike, const usage::OdometerSeries& odometer, const usage::EngineHours& hours) {
    const auto& details = bike.details.value;
    Moment start;
    start.date = details.in_service_date;
    start.distance = Distance{};
    if (details.in_service_odometer) {
        const Date day = details.in_service_date.value_or(
            Date{std::chrono::year{1900}, std::chrono::January, std::chrono::day{1}});
        if (const auto distance = odometer.dials().true_distance(*details.in_service_odometer, day))
            start.distance = *distance;
    }
    start.engine_hours = hours.metered() ? 0.0 : hours.hours_at(*start.distance);
    return start;
}

} // namespace sumpbook::upkeep
