// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/report_history.h"

#include "model/garage/slugs.h"
#include "model/usage/odometer.h"
#include "reports/compose/entry_words.h"
#include "reports/compose/findings.h"
#include "reports/compose/words.h"

#include <algorithm>
#include <array>

namespace sumpbook::compose {
namespace {

using document::Align;
using document::Cell;
using document::Document;
using document::Severity;

/// Fuel, readings and money would bury what was done; notes and loose files are the owner's own.
bool is_shown(const Entry& entry) {
    return !std::holds_alternative<Fuel>(entry.body) && !std::holds_alternative<Reading>(entry.body) &&
           !std::holds_alternative<Cost>(entry.body) && !std::holds_alternative<Note>(entry.body) &&
           !std::holds_alternative<Attach>(entry.body);
}

/// What somebody did to the bike: what evidence is asked for.
bool is_job(const Entry& entry) {
    return std::holds_alternative<Work>(entry.body) || std::holds_alternative<OilChange>(entry.body) ||
           std::holds_alternative<Fit>(entry.body) || std::holds_alternative<Modification>(entry.body);
}

std::size_t count_if(const Bike& bike, bool (*wanted)(const Entry&)) {
    return static_cast<std::size_t>(
        std::ranges::count_if(bike.log, [&](const LogEntry& entry) { return wanted(entry.value); }));
}

std::string done_by_words(const Entry& entry) {
    const auto* work = std::get_if<Work>(&entry.body);
    return work != nullptr && work->done_by ? std::string(slug(*work->done_by)) : std::string("-");
}

std::string evidence_words(const Entry& entry) {
    std::string text =
        entry.evidence ? std::string(slug(*entry.evidence)) : std::string(is_job(entry) ? "not stated" : "-");
    if (!entry.attachments.empty()) text += ", with a copy";
    return text;
}

std::string what_words(const LogEntry& logged) {
    const std::string text = kind_words(kind_slug(logged.value.body)) + ": " + entry_words(logged.value);
    return logged.value.doubts.empty() ? text : text + " (in doubt)";
}

bool says_who(const LogEntry& logged) {
    const auto* work = std::get_if<Work>(&logged.value.body);
    return work != nullptr && work->done_by;
}

document::Table done_table(const Bike& bike) {
    const bool by = std::ranges::any_of(bike.log, says_who);
    document::Table table{{{"Date", {}}, {"Odometer", Align::right}, {"What", {}}}, {}};
    if (by) table.columns.push_back({"By", {}});
    table.columns.insert(table.columns.end(), {{"Evidence", {}}, {"Entry", {}}});
    for (const auto& logged : bike.log) {
        if (!is_shown(logged.value)) continue;
        std::vector<Cell> row{{iso_text(logged.value.date), {}},
                              {words_or_dash(logged.value.odometer), {}},
                              {what_words(logged), {}}};
        if (by) row.push_back({done_by_words(logged.value), {}});
        row.push_back({evidence_words(logged.value), {}});
        row.push_back({logged.id, {}});
        table.rows.push_back(std::move(row));
    }
    return table;
}

/// "12 jobs: 5 by invoice, 2 by stamp, 5 not stated."
std::string evidence_sums(const Bike& bike) {
    constexpr std::array kinds{Evidence::invoice, Evidence::stamp, Evidence::seen, Evidence::told,
                               Evidence::none};
    std::array<std::size_t, kinds.size()> sums{};
    std::size_t jobs = 0;
    std::size_t stated = 0;
    for (const auto& logged : bike.log) {
        if (!is_job(logged.value)) continue;
        ++jobs;
        if (!logged.value.evidence) continue;
        ++stated;
        ++sums[static_cast<std::size_t>(*logged.value.evidence)];
    }
    if (jobs == 0) return "No job is recorded.";
    std::string text = counted(jobs, "job", "jobs") + " recorded. Evidence:";
    for (const auto kind : kinds) {
        const auto sum = sums[static_cast<std::size_t>(kind)];
        if (sum != 0) text += " " + std::string(slug(kind)) + " " + std::to_string(sum) + ",";
    }
    return text + " not stated " + std::to_string(jobs - stated) + ".";
}

std::string span_words(const Bike& bike) {
    std::string text = counted(bike.log.size(), "entry", "entries") + " from " +
                       spelled_text(bike.log.front().value.date) + " to " +
                       spelled_text(bike.log.back().value.date);
    const auto span = usage::OdometerSeries::of(bike).span();
    if (!span) return text + "; the odometer was never read.";
    const auto unit = bike.details.value.odometer_unit;
    return text + ", over " + words(span->distance(), unit) + " of the bike's " + words(span->at_last, unit) +
           ".";
}

void add_short_answer(Document& text, const HistoryOfBike& history, int level) {
    text.heading("In short", level).sentence(span_words(*history.bike));
    text.sentence(evidence_sums(*history.bike));
    const auto serious = std::ranges::any_of(
        history.findings, [](const auto& finding) { return finding.severity == review::Severity::serious; });
    const bool odd = !history.gaps.empty() || !history.findings.empty();
    // Corrections are nothing bad in themselves: no caution, but no praise either.
    const auto otherwise = history.corrections.empty() ? Severity::good : Severity::none;
    text.sentence(
        counted(history.gaps.size(), "gap", "gaps") + " of half a year or more; " +
            counted(history.findings.size(), "thing that looks odd", "things that look odd") + "; " +
            counted(history.corrections.size(), "correction or withdrawal", "corrections and withdrawals") +
            ".",
        serious ? Severity::danger
        : odd   ? Severity::caution
                : otherwise);
}

/// Taken over from lists: typed long after the day, which is not held against an entry.
void add_imported(Document& text, const Bike& bike) {
    const auto imported = count_if(bike, [](const Entry& entry) { return entry.imported.has_value(); });
    if (imported != 0)
        text.sentence(
            "Taken over from lists that the owner kept before: " + counted(imported, "entry", "entries") +
            " of all " + std::to_string(bike.log.size()) + ".");
}

void add_identity(Document& text, const Bike& bike, int level) {
    const auto& d = bike.details.value;
    document::Facts facts;
    if (d.maker) facts.lines.emplace_back("Maker", *d.maker);
    if (d.model) facts.lines.emplace_back("Model", *d.model);
    if (d.year) facts.lines.emplace_back("Year", std::to_string(*d.year));
    if (d.vin) facts.lines.emplace_back("VIN", *d.vin);
    if (d.displacement_cm3) facts.lines.emplace_back("Engine", std::to_string(*d.displacement_cm3) + " cm3");
    if (d.in_service_date) facts.lines.emplace_back("On the road since", spelled_text(*d.in_service_date));
    if (d.bought) facts.lines.emplace_back("With this owner since", spelled_text(d.bought->date));
    if (facts.lines.empty()) return;
    text.heading("The bike", level).facts(std::move(facts));
}

void add_done(Document& text, const Bike& bike, int level) {
    text.heading("Everything done, in order", level).table(done_table(bike));
    const auto fuel =
        count_if(bike, [](const Entry& entry) { return std::holds_alternative<Fuel>(entry.body); });
    text.sentence("Not listed: " + counted(fuel, "stop for fuel", "stops for fuel") + " and " +
                  counted(bike.log.size() - count_if(bike, &is_shown) - fuel, "entry", "entries") +
                  " of readings, costs, notes and files. Left out of all entries: money, notes, places and "
                  "names of people.");
    add_imported(text, bike);
}

/// Whether a finding would show an amount of money or a private field.
bool tells_too_much(const review::Finding& finding, const Bike& bike) {
    if (finding.id == "paid-twice" || finding.id == "fuel-price-unusual") return true;
    for (const auto& logged : bike.log) {
        for (const auto& doubt : logged.value.doubts) {
            const bool same = doubt.column == finding.place.column && doubt.text == finding.place.text;
            if (same && doubt.part != Part::open) return true;
        }
    }
    return false;
}

void add_odd(Document& text, const HistoryOfBike& history, int level) {
    auto shown = history.findings;
    const auto left_out = std::erase_if(
        shown, [&](const review::Finding& finding) { return tells_too_much(finding, *history.bike); });
    text.heading("What looks odd", level);
    if (!shown.empty() || left_out == 0) text.append(findings_text(shown));
    if (left_out != 0)
        text.sentence("Left out, because it is about money or private fields: " +
                      counted(left_out, "thing", "things") + ".");
}

void add_gaps(Document& text, const HistoryOfBike& history, int level) {
    text.heading("Gaps in the record", level);
    const auto unit = history.bike->details.value.odometer_unit;
    for (const auto& gap : history.gaps) {
        std::string sentence = "Nothing from " + spelled_text(gap.from) + " to " + spelled_text(gap.to) +
                               ", " + std::to_string(days_between(gap.from, gap.to)) + " days";
        sentence += gap.ridden ? "; in that time the bike went " + words(*gap.ridden, unit) + "."
                               : "; how far it went is not known.";
        if (gap.laid_up) sentence += " It was laid up, by the owner's entry.";
        text.sentence(sentence, gap.laid_up ? Severity::none : Severity::caution);
    }
    if (history.gaps.empty())
        text.sentence("There is no half year without an entry between the first entry and the last.",
                      Severity::good);
    text.sentence("What was before the first entry is not known from this file.");
}

void add_corrections(Document& text, const std::vector<Correction>& corrections, int level) {
    text.heading("Corrected and withdrawn", level);
    if (corrections.empty()) {
        text.sentence("No entry was corrected or withdrawn since it was first recorded.");
        return;
    }
    document::Table table{
        {{"Recorded", {}}, {"Version", {}}, {"Entry of", {}}, {"It said", {}}, {"Change", {}}}, {}};
    for (const auto& one : corrections) {
        std::string change = one.withdrawn ? "withdrawn" : "";
        for (const auto& field : one.changes)
            change += (change.empty() ? "" : "; ") + field;
        if (change.empty()) change = "only money or private fields";
        table.rows.push_back({Cell{iso_text(one.recorded).substr(0, 10), {}}, Cell{one.id, {}},
                              Cell{iso_text(one.of), {}}, Cell{one.earlier, {}}, Cell{change, {}}});
    }
    text.table(std::move(table));
    text.sentence("A correction is nothing bad in itself: slips of the pen are put right so. What was first "
                  "written is kept, and shown here.");
}

void add_bike(Document& text, const HistoryOfBike& history, int level) {
    add_identity(text, *history.bike, level);
    if (history.bike->log.empty()) {
        text.sentence("Nothing is recorded of this bike yet.");
        return;
    }
    add_short_answer(text, history, level);
    add_done(text, *history.bike, level);
    text.heading("Distance over time", level);
    add_pictures(text, history.pictures, "The odometer was never read.");
    add_gaps(text, history, level);
    add_odd(text, history, level);
    add_corrections(text, history.corrections, level);
}

} // namespace

Document report_history(const ReportFront& front, const std::vector<HistoryOfBike>& bikes) {
    Document text = report_front("History", front);
    for (const auto& history : bikes) {
        if (bikes.size() > 1) text.heading(history.bike->details.value.name);
        add_bike(text, history, bikes.size() > 1 ? 3 : 2);
    }
    text.heading("How to read this");
    text.sentence(
        "Evidence is what the owner says an entry can be shown by: invoice, stamp, seen (done before "
        "the owner's eyes), told, none. Ask for the papers. Days and numbers are as they were entered; "
        "the program notices when entries are changed later, not whether they were true.");
    add_report_foot(text, front);
    return text;
}

} // namespace sumpbook::compose
