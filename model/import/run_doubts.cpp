// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/import/run_doubts.h"

#include "model/import/odometer_run.h"

#include <fmt/format.h>

#include <algorithm>
#include <span>

namespace sumpbook::import {
namespace {

/// A reading and the entry of the plan it stands in; nullptr for one of the garage.
struct Placed {
    RunReading reading;
    PlannedEntry* planned = nullptr;
};

std::string digits_of(const Decimal& number) {
    std::string text = number.text();
    std::erase_if(text, [](char c) { return c < '0' || c > '9'; });
    return text;
}

bool changes_clock(const Entry& entry) {
    const auto* reading = std::get_if<Reading>(&entry.body);
    return reading != nullptr && reading->clock_change.has_value();
}

void place(std::vector<Placed>& all, const Entry& entry, PlannedEntry* planned) {
    if (!entry.odometer) return;
    const auto distance = distance_of(*entry.odometer);
    if (!distance) return;
    all.push_back(
        {{.date = entry.date, .odometer = *distance, .digits = digits_of(entry.odometer->number)}, planned});
}

const Column* odometer_column(const ImportPlan& plan) { return plan.columns.of("odometer"); }

std::string expected_of(const RunFinding& finding, DistanceUnit unit) {
    if (finding.fault == RunFault::falls_and_stays)
        return "a higher reading than before: was the clock replaced? It stays as typed until this is "
               "settled";
    const auto text = [unit](Distance distance) {
        return in_unit(distance, unit, 0).text() + " " + std::string(symbol(unit));
    };
    std::string range = "a reading";
    if (finding.low && finding.high)
        range += " from " + text(*finding.low) + " to " + text(*finding.high);
    else if (finding.low)
        range += " a little above " + text(*finding.low);
    else if (finding.high)
        range += " a little below " + text(*finding.high);
    return range + ", as the readings of the days around it say; it stays as typed until this is settled";
}

void doubt_reading(const ImportPlan& plan, PlannedEntry& planned, const RunFinding& finding) {
    const WrittenDistance& odometer = *planned.entry.odometer;
    const Column* column = odometer_column(plan);
    planned.entry.doubts.push_back({.file = plan.file,
                                    .line = static_cast<std::uint32_t>(planned.line),
                                    .column = column == nullptr ? "odometer" : column->heading,
                                    .text = planned.odometer_typed,
                                    .expected = expected_of(finding, odometer.unit),
                                    .part = Part::open});
}

void check_run(ImportPlan& plan, std::span<const Placed> run) {
    std::vector<RunReading> readings;
    for (const auto& placed : run)
        readings.push_back(placed.reading);
    for (const auto& finding : find_run_faults(readings))
        if (auto* planned = run[finding.index].planned; planned != nullptr)
            doubt_reading(plan, *planned, finding);
}

/// Clock changes cut the record into runs, each checked by itself.
void check_runs(ImportPlan& plan, std::vector<Placed> all, std::vector<Date> changes) {
    const auto date_of = [](const Placed& placed) { return placed.reading.date; };
    std::ranges::stable_sort(all, {}, date_of);
    std::ranges::sort(changes);
    changes.push_back(Date{std::chrono::year{9999} / 12 / 31});
    auto from = all.begin();
    for (const Date& change : changes) {
        const auto until = std::ranges::lower_bound(from, all.end(), change, {}, date_of);
        check_run(plan, {from, until});
        from = until;
    }
}

} // namespace

void add_run_doubts(ImportPlan& plan, const Garage& garage) {
    for (const auto& bike : garage.bikes) {
        std::vector<Placed> all;
        std::vector<Date> changes;
        const auto take = [&](const Entry& entry, PlannedEntry* planned) {
            place(all, entry, planned);
            if (changes_clock(entry)) changes.push_back(entry.date);
        };
        std::vector<PlannedEntry*> of_bike;
        for (auto& planned : plan.entries)
            if (planned.bike == bike.id) of_bike.push_back(&planned);
        if (of_bike.empty()) continue;
        for (const auto& logged : bike.log)
            take(logged.value, nullptr);
        for (auto* planned : of_bike)
            take(planned->entry, planned);
        check_runs(plan, std::move(all), std::move(changes));
    }
}

} // namespace sumpbook::import
