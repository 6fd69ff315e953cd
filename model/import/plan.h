// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/garage.h"
#include "model/import/columns.h"
#include "model/import/duplicates.h"
#include "model/import/encoding.h"
#include "model/import/marks.h"
#include "model/import/request.h"

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace sumpbook::import {

/// How the file was found to be written.
struct FoundLayout {
    Encoding encoding = Encoding::utf8;
    char separator = ',';
    std::size_t heading_line = 0;
    std::vector<std::size_t> lines_before; ///< Lines above the heading that hold something; kept out.
    Marks marks;
};

/// One entry to be added. Its doubts stand in it.
struct PlannedEntry {
    std::size_t line = 0;
    SubjectId bike;
    std::string bike_name;
    std::string odometer_typed; ///< The cell, for a doubt about the reading.
    Entry entry;
};

/// A row that cannot become an entry: no date, an unknown bike, more cells than headings.
struct KeptOutRow {
    std::size_t line = 0;
    std::string reason;
    Doubt doubt; ///< The cell that decided it, as typed.
};

/// A row that says what an entry of the garage, a version of it or an earlier row says already; it stays out.
struct DuplicateRow {
    std::size_t line = 0;
    Known known;
};

/// What an import would do, whole. Nothing has been written; the program adds all entries as one action.
struct ImportPlan {
    ImportKind kind = ImportKind::fuel;
    std::string file;
    FoundLayout layout;
    Columns columns;
    std::vector<Question> questions;  ///< While there are any, there are no entries.
    std::vector<std::string> notices; ///< What was taken for granted, in sentences.
    std::size_t rows = 0;             ///< Rows below the heading, blank ones left out.
    /// In the order of days; those of one day in the order of the file, turned round where the file runs from
    /// new to old. Recorded in this order, readings of one day rise.
    std::vector<PlannedEntry> entries;
    std::vector<DuplicateRow> duplicates;
    std::vector<KeptOutRow> kept_out;

    [[nodiscard]] bool ready() const { return questions.empty(); }
    [[nodiscard]] std::vector<Doubt> doubts() const; ///< Of all entries, by line.
};

/// A longer row is kept out: no text of a garage file may be longer, and a doubt holds a whole row.
inline constexpr std::size_t most_row_bytes = 64U * 1024U;

/// All stages: bytes, text, rows, columns, entries, difference against the garage. `today` is put into
/// "imported from FILE on DATE". `records` are all of the garage's: a row that an entry said before it was
/// corrected or withdrawn stays out too. Refused where the file cannot be read as a table at all or the
/// options do not fit it; everything else is in the plan.
[[nodiscard]] Result<ImportPlan> plan_import(ImportKind kind, const std::string& file, std::string_view bytes,
                                             const ImportOptions& options, const Garage& garage,
                                             const std::vector<NamedRecord>& records, const Date& today);

} // namespace sumpbook::import
