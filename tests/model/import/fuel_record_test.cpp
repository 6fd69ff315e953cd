// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/import/plan.h"
#include "model/usage/fuel.h"

#include "tests/catch.h"
#include "tests/model/import/fuel_file_generator.h"
#include "tests/model/import/import_garage.h"

#include <algorithm>
#include <cmath>
#include <iostream>
#include <map>
#include <set>

using namespace sumpbook;
using namespace sumpbook::import;

// 200 generated fuel files whose truth is known. What must hold for every single one: no value reads as
// another one, every duplicate and the one slip of the hand are named by line, and the consumption from full
// to full is right to 0.001 L/100 km. Over all files together doubts about right rows stay under 3 % of rows.

namespace {

struct Tally {
    std::size_t files = 0, rows = 0, values = 0, changed = 0, lost = 0;
    std::size_t duplicates = 0, duplicates_named = 0, typos_named = 0, unreadable = 0, unreadable_named = 0;
    std::size_t false_alarms = 0, spans = 0, spans_right = 0;
    double worst_span = 0;
};

Decimal decimal_of(const TrueNumber& number) { return Decimal(number.steps, number.scale); }

void compare(Tally& tally, bool present, bool equal) {
    ++tally.values;
    if (!present)
        ++tally.lost;
    else if (!equal)
        ++tally.changed;
}

void compare_fill(Tally& tally, const FuelFile& file, const TrueFill& truth, const Entry& entry) {
    const auto* fuel = std::get_if<Fuel>(&entry.body);
    REQUIRE(fuel != nullptr);
    compare(tally, true, entry.date == truth.date);
    compare(tally, entry.odometer.has_value(),
            entry.odometer && entry.odometer->number.same_as_written(decimal_of(truth.odometer)) &&
                entry.odometer->unit == file.distance_unit);
    compare(tally, fuel->volume.has_value(),
            fuel->volume && fuel->volume->number.same_as_written(decimal_of(truth.volume)) &&
                fuel->volume->unit == file.volume_unit);
    compare(tally, fuel->price.has_value(),
            fuel->price && fuel->price->amount.same_as_written(decimal_of(truth.price)) &&
                fuel->price->per == file.volume_unit);
    compare(tally, entry.paid.has_value(),
            entry.paid && entry.paid->minor == truth.total.steps && entry.paid->currency.code() == "EUR");
    compare(tally, true, fuel->full == truth.full);
    compare(tally, true, fuel->missed_before == truth.missed);
    const bool unreadable = file.unreadable_lines.contains(truth.line);
    if (unreadable)
        compare(tally, true, !fuel->octane);
    else
        compare(tally, fuel->octane.has_value(), fuel->octane == Decimal(95));
}

std::set<std::size_t> doubted_lines(const ImportPlan& plan) {
    std::set<std::size_t> lines;
    for (const auto& doubt : plan.doubts())
        lines.insert(doubt.line);
    return lines;
}

void compare_findings(Tally& tally, const FuelFile& file, const ImportPlan& plan) {
    std::set<std::size_t> duplicates;
    for (const auto& duplicate : plan.duplicates)
        duplicates.insert(duplicate.line);
    auto doubted = doubted_lines(plan);
    tally.duplicates += file.duplicate_lines.size();
    for (const std::size_t line : file.duplicate_lines)
        tally.duplicates_named += duplicates.erase(line);
    tally.unreadable += file.unreadable_lines.size();
    for (const std::size_t line : file.unreadable_lines)
        tally.unreadable_named += doubted.erase(line);
    tally.typos_named += doubted.erase(file.typo_line);
    tally.false_alarms += doubted.size() + duplicates.size() + plan.kept_out.size();
}

/// The bike after the plan was applied and the owner put the one slip right.
Bike bike_after(const FuelFile& file, const ImportPlan& plan) {
    Bike bike = one_bike().bikes.front();
    for (const auto& planned : plan.entries) {
        Entry entry = planned.entry;
        if (planned.line == file.typo_line)
            entry.odometer->number =
                decimal_of(std::ranges::find(file.fills, planned.line, &TrueFill::line)->right_odometer);
        record(bike, entry, std::to_string(planned.line).c_str());
    }
    return bike;
}

void compare_consumption(Tally& tally, const FuelFile& file, const ImportPlan& plan) {
    const Bike bike = bike_after(file, plan);
    std::map<std::string, double> found;
    const auto use = usage::fuel_use(bike, usage::OdometerSeries::of(bike));
    for (const auto& span : use.spans)
        if (span.consumption) found.emplace(span.to_id, span.consumption->litres_per_100km);
    tally.spans += file.spans.size();
    for (const auto& span : file.spans) {
        const auto same = found.find(std::to_string(span.to_line));
        if (same == found.end()) continue;
        const double off = std::abs(same->second - span.litres_per_100km);
        tally.worst_span = std::max(tally.worst_span, off);
        if (off <= 0.001) ++tally.spans_right;
    }
    CHECK(found.size() == file.spans.size());
}

void check_file(Tally& tally, const FuelFile& file) {
    const auto plan =
        plan_import(ImportKind::fuel, "fuel.csv", file.bytes, file.options, one_bike(), {}, import_day);
    REQUIRE(plan);
    for (const auto& question : plan->questions)
        UNSCOPED_INFO(question.sentence);
    REQUIRE(plan->ready());
    ++tally.files;
    tally.rows += plan->rows;
    CHECK(plan->rows == file.rows);
    CHECK(plan->entries.size() == file.fills.size());
    for (const auto& planned : plan->entries) {
        const auto truth = std::ranges::find(file.fills, planned.line, &TrueFill::line);
        REQUIRE(truth != file.fills.end());
        compare_fill(tally, file, *truth, planned.entry);
    }
    compare_findings(tally, file, *plan);
    compare_consumption(tally, file, *plan);
}

} // namespace

TEST_CASE("200 generated fuel files: nothing changed, everything named, consumption right") {
    const std::uint64_t seed = Catch::rngSeed();
    Tally tally;
    for (std::uint64_t number = 0; number < 200; ++number) {
        const FuelFile file = generate_fuel_file(seed * 1000 + number);
        INFO("seed " << seed << ", file " << number << ": " << file.manner);
        check_file(tally, file);
    }
    std::cout << "fuel files: seed " << seed << "; " << tally.files << " files, " << tally.rows << " rows, "
              << tally.values << " values; changed " << tally.changed << ", lost " << tally.lost
              << "; duplicates named " << tally.duplicates_named << " of " << tally.duplicates
              << "; typing faults named " << tally.typos_named << " of " << tally.files
              << "; unreadable cells named " << tally.unreadable_named << " of " << tally.unreadable
              << "; false alarms " << tally.false_alarms << " ("
              << 100.0 * static_cast<double>(tally.false_alarms) / static_cast<double>(tally.rows)
              << " % of rows); spans right " << tally.spans_right << " of " << tally.spans
              << ", worst off by " << tally.worst_span << " L/100 km\n";
    CHECK(tally.files == 200);
    CHECK(tally.changed == 0);
    CHECK(tally.lost == 0);
    CHECK(tally.duplicates_named == tally.duplicates);
    CHECK(tally.typos_named == tally.files);
    CHECK(tally.unreadable_named == tally.unreadable);
    CHECK(tally.spans_right == tally.spans);
    CHECK(tally.false_alarms * 100 < tally.rows * 3);
}
