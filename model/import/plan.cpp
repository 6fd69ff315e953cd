// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/import/plan.h"

#include "model/import/entry_rows.h"
#include "model/import/notices.h"
#include "model/import/run_doubts.h"
#include "model/import/words.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <numeric>

namespace sumpbook::import {
namespace {

/// The cells of a row side by side, for telling it apart.
std::string joined(const Row& row) {
    std::string text;
    for (const auto& cell : row.cells)
        text += (text.empty() ? "" : " | ") + cell;
    return text;
}

std::size_t joined_bytes(const Row& row) {
    constexpr std::size_t between = 3;
    return std::accumulate(row.cells.begin(), row.cells.end(), std::size_t{0},
                           [](std::size_t sum, const auto& cell) { return sum + between + cell.size(); });
}

// Estimates of the memory of what a plan holds and compares with, lists at twice their size since they grow.
constexpr std::size_t memory_of_row_kept_out = 2 * sizeof(KeptOutRow) + 200;
constexpr std::size_t memory_of_doubt = 3 * sizeof(Doubt) + 300;

std::size_t memory_of(const Entry& entry) {
    std::size_t memory = 2 * sizeof(PlannedEntry) + sizeof(Entry) + 300;
    memory += entry.doubts.size() * memory_of_doubt;
    if (const auto* work = std::get_if<Work>(&entry.body))
        memory += 3 * (work->parts.size() * sizeof(PartUsed) + work->checks.size() * sizeof(CheckDone) +
                       work->torques.size() * sizeof(TorqueApplied) +
                       work->paint_marks_seen.size() * sizeof(PaintMarkSeen));
    if (const auto* sample = std::get_if<Sample>(&entry.body))
        memory += 3 * sample->values.size() * sizeof(SampleValue);
    return memory;
}

/// Turns the rows of a table into the entries of a plan.
class Planner {
public:
    Planner(ImportPlan& plan, const Table& table, const RowContext& context, const ImportOptions& options,
            const std::vector<NamedRecord>& records)
        : plan_(plan)
        , table_(table)
        , context_(context)
        , options_(options)
        , records_(records)
        , marking_(find_fill_marking(table, plan.columns)) {}

    /// Refused: entries and doubts that would take more memory than a file of so many bytes may.
    Result<void> run(std::size_t file_bytes) {
        for (const auto& row : table_.rows)
            memory_ += memory_of(row);
        for (const auto& row : table_.rows) {
            read(row);
            if (memory_ > memory_allowed(file_bytes)) return too_many_rows(row.line);
        }
        return {};
    }

private:
    void read(const Row& row) {
        if (joined_bytes(row) > most_row_bytes)
            return keep_out(row, fmt::format("it is longer than {} bytes", most_row_bytes), {}, {});
        if (row.cells.size() > table_.headings.size() && holds_more_than_headings(row))
            return keep_out(
                row,
                fmt::format("it has {} cells and the heading {}", row.cells.size(), table_.headings.size()),
                {}, joined(row));
        const Bike* bike = bike_of(row);
        if (bike == nullptr) return;
        RowReader reader(context_, row, *bike);
        Entry entry;
        auto verdict = read_common(reader, entry);
        if (verdict.holds_entry) verdict = read_body(reader, entry);
        if (!verdict.holds_entry) return keep_out_row(reader, verdict.reason);
        doubt_shape(reader, row);
        entry.doubts = reader.doubts();
        entry.imported = ImportedFrom{.file = plan_.file, .date = context_.today};
        add(*bike, {.line = row.line,
                    .bike = bike->id,
                    .bike_name = bike->details.value.name,
                    .odometer_typed = std::string(reader.cell("odometer")),
                    .entry = std::move(entry)});
    }

    [[nodiscard]] bool holds_more_than_headings(const Row& row) const {
        return std::any_of(row.cells.begin() + static_cast<std::ptrdiff_t>(table_.headings.size()),
                           row.cells.end(), [](const auto& cell) { return !trimmed(cell).empty(); });
    }

    /// The bike that the row names, else the one stated, else the only one; nullptr after keeping the row
    /// out.
    const Bike* bike_of(const Row& row) {
        const Column* column = plan_.columns.of("bike");
        const auto typed = column != nullptr && column->index < row.cells.size()
                               ? trimmed(row.cells[column->index])
                               : std::string_view();
        const auto& bikes = context_.garage.bikes;
        const Bike* found = nullptr;
        if (!typed.empty())
            found = find_bike(context_.garage, typed);
        else if (options_.bike)
            found = find_bike(context_.garage, *options_.bike);
        else if (bikes.size() == 1)
            found = &bikes.front();
        if (found == nullptr)
            keep_out(row, typed.empty() ? "it names no bike" : "its bike is not in the garage",
                     column != nullptr ? column->heading : "bike", std::string(typed));
        return found;
    }

    RowVerdict read_body(RowReader& reader, Entry& entry) const {
        switch (plan_.kind) {
        case ImportKind::fuel:
            return read_fuel(reader, entry, marking_);
        case ImportKind::work:
            return read_work(reader, entry);
        case ImportKind::costs:
            return read_cost(reader, entry);
        case ImportKind::readings:
            return read_reading(reader, entry);
        case ImportKind::samples:
            return read_sample(reader, entry);
        }
        return {};
    }

    void doubt_shape(RowReader& reader, const Row& row) const {
        if (row.cells.size() < table_.headings.size())
            reader.doubt_row(joined(row),
                             fmt::format("{} cells as in the heading, not {}; a separator may be missing",
                                         table_.headings.size(), row.cells.size()));
        for (const std::size_t at : row.stray_quotes)
            if (at < plan_.columns.all.size() && plan_.columns.all[at].field != nullptr)
                reader.doubt(plan_.columns.all[at].field->slug,
                             "double quotes only around a whole cell, and doubled inside");
    }

    void keep_out(const Row& row, std::string reason, std::string column, std::string text) {
        plan_.kept_out.push_back({.line = row.line,
                                  .reason = std::move(reason),
                                  .doubt = {.file = plan_.file,
                                            .line = static_cast<std::uint32_t>(row.line),
                                            .column = std::move(column),
                                            .text = std::move(text),
                                            .expected = {},
                                            .part = Part::open}});
        memory_ += memory_of_row_kept_out;
    }

    void keep_out_row(const RowReader& reader, const std::string& reason) {
        if (reader.doubts().empty()) return keep_out(reader.row(), reason, {}, joined(reader.row()));
        plan_.kept_out.push_back(
            {.line = reader.row().line, .reason = reason, .doubt = reader.doubts().front()});
        memory_ += memory_of_row_kept_out;
    }

    void add(const Bike& bike, PlannedEntry planned) {
        auto [known, is_new] = known_.try_emplace(bike.id, bike, records_);
        if (const auto same = known->second.same_as(planned.entry)) {
            plan_.duplicates.push_back({.line = planned.line, .known = *same});
            return;
        }
        const auto similar = known->second.similar_to(planned.entry);
        known->second.add(planned.entry, planned.line);
        if (similar) doubt_similar(planned.entry, planned.line, *similar);
        memory_ += memory_of(planned.entry);
        plan_.entries.push_back(std::move(planned));
    }

    void doubt_similar(Entry& entry, std::size_t line, const Known& similar) const {
        const std::string where = similar.line ? fmt::format("line {}", *similar.line) : similar.id;
        entry.doubts.push_back(
            {.file = plan_.file,
             .line = static_cast<std::uint32_t>(line),
             .column = {},
             .text = {},
             .expected =
                 fmt::format("another event than {}, which has the same {} and differs otherwise", where,
                             plan_.kind == ImportKind::samples ? "sample number" : "date and odometer"),
             .part = Part::open});
    }

    ImportPlan& plan_;
    const Table& table_;
    const RowContext& context_;
    const ImportOptions& options_;
    const std::vector<NamedRecord>& records_;
    FillMarking marking_;
    std::map<SubjectId, KnownEntries> known_;
    std::size_t memory_ = 0; ///< An estimate of all that was set aside.
};

/// Fields without which no row of the import can become an entry.
std::vector<std::vector<std::string>> needed_fields(ImportKind kind) {
    switch (kind) {
    case ImportKind::fuel:
        return {{"date"}, {"volume", "total"}};
    case ImportKind::work:
        return {{"date"}};
    case ImportKind::costs:
        return {{"date"}, {"amount"}};
    case ImportKind::readings:
        return {{"date"}, {"odometer", "hours", "old last"}};
    case ImportKind::samples:
        return {{"date", "sent"}};
    }
    return {};
}

void ask_about_missing(ImportPlan& plan) {
    for (const auto& choice : needed_fields(plan.kind)) {
        const bool there =
            std::ranges::any_of(choice, [&](const auto& slug) { return plan.columns.of(slug) != nullptr; });
        if (there || !plan.columns.questions.empty()) continue;
        plan.questions.push_back(
            {fmt::format("No column was found for \"{}\": which one is it?", choice.front()),
             fmt::format("--map \"Heading={}\"", choice.front())});
    }
}

void ask_about_bike(ImportPlan& plan, const ImportOptions& options, const Garage& garage) {
    if (options.bike || plan.columns.of("bike") != nullptr || garage.bikes.size() == 1) return;
    std::vector<std::string> names;
    for (const auto& bike : garage.bikes)
        names.push_back("\"" + bike.details.value.name + "\"");
    const std::string which =
        names.empty() ? "The garage has no bike yet" : "Which bike is the file about: " + listed(names);
    plan.questions.push_back(
        {which + (names.empty() ? "." : "?"), names.empty() ? "bike add" : "-b " + names.front()});
}

bool runs_backwards(const std::vector<PlannedEntry>& entries) {
    std::size_t falls = 0;
    std::size_t rises = 0;
    for (std::size_t i = 1; i < entries.size(); ++i) {
        if (entries[i].entry.date < entries[i - 1].entry.date) ++falls;
        if (entries[i].entry.date > entries[i - 1].entry.date) ++rises;
    }
    return falls > rises;
}

void put_in_order_of_days(std::vector<PlannedEntry>& entries) {
    if (runs_backwards(entries)) std::ranges::reverse(entries);
    std::ranges::stable_sort(entries, {}, [](const PlannedEntry& planned) { return planned.entry.date; });
}

ImportPlan plan_with_layout(ImportKind kind, const std::string& file, const Table& table, Encoding encoding) {
    ImportPlan plan;
    plan.kind = kind;
    plan.file = file;
    plan.layout = {.encoding = encoding,
                   .separator = table.separator,
                   .heading_line = table.heading_line,
                   .lines_before = {},
                   .marks = {}};
    for (const auto& row : table.before)
        plan.layout.lines_before.push_back(row.line);
    plan.rows = table.rows.size();
    return plan;
}

} // namespace

std::vector<Doubt> ImportPlan::doubts() const {
    std::vector<Doubt> all;
    for (const auto& planned : entries)
        all.insert(all.end(), planned.entry.doubts.begin(), planned.entry.doubts.end());
    std::ranges::stable_sort(all, {}, &Doubt::line);
    return all;
}

Result<ImportPlan> plan_import(ImportKind kind, const std::string& file, std::string_view bytes,
                               const ImportOptions& options, const Garage& garage,
                               const std::vector<NamedRecord>& records, const Date& today) {
    const auto in_file = [&file](Problem problem) {
        problem.place.file = file;
        return problem;
    };
    if (options.bike && find_bike(garage, *options.bike) == nullptr)
        return fail(ProblemKind::wrong_usage,
                    fmt::format("There is no bike \"{}\" in the garage.", *options.bike));
    const auto decoded = decode_text(bytes, options.encoding);
    if (!decoded) return pass_on(in_file(decoded.error()));
    const auto table = find_table(decoded->text, kind, options);
    if (!table) return pass_on(in_file(table.error()));
    ImportPlan plan = plan_with_layout(kind, file, *table, decoded->encoding);
    auto columns = propose_columns(kind, table->headings, options, currency_of(garage));
    if (!columns) return pass_on(columns.error());
    plan.columns = std::move(*columns);
    plan.layout.marks = find_marks(*table, plan.columns, options);
    ask_about_bike(plan, options, garage);
    ask_about_missing(plan);
    for (const auto* more : {&plan.columns.questions, &plan.layout.marks.questions})
        plan.questions.insert(plan.questions.end(), more->begin(), more->end());
    if (!plan.ready()) return plan;
    plan.notices = notices_of(plan, *table, garage);
    const RowContext context{.file = plan.file,
                             .kind = kind,
                             .columns = plan.columns,
                             .marks = plan.layout.marks,
                             .garage = garage,
                             .today = today};
    if (const auto done = Planner(plan, *table, context, options, records).run(bytes.size()); !done)
        return pass_on(in_file(done.error()));
    put_in_order_of_days(plan.entries);
    add_run_doubts(plan, garage);
    return plan;
}

} // namespace sumpbook::import
