// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/export_tables.h"

#include "reports/compose/entry_cells.h"

#include <algorithm>
#include <array>
#include <utility>

namespace sumpbook::compose {
namespace {

constexpr std::array<std::pair<std::string_view, ExportKind>, 5> words_of_kinds{
    {{"fuel", ExportKind::fuel},
     {"work", ExportKind::work},
     {"costs", ExportKind::costs},
     {"readings", ExportKind::readings},
     {"samples", ExportKind::samples}}};

using Row = std::vector<std::pair<std::string, std::string>>; ///< Heading and text.

/// The list an entry goes into: all that has none of its own stands under work.
ExportKind kind_of(const Entry& entry) {
    if (std::holds_alternative<Fuel>(entry.body)) return ExportKind::fuel;
    if (std::holds_alternative<Cost>(entry.body)) return ExportKind::costs;
    if (std::holds_alternative<Reading>(entry.body)) return ExportKind::readings;
    return std::holds_alternative<Sample>(entry.body) ? ExportKind::samples : ExportKind::work;
}

/// A spreadsheet takes text that starts so for a formula; an apostrophe in front keeps it text.
std::string guarded(const EntryCell& cell, bool guard) {
    const bool formula = guard && cell.is_text && !cell.text.empty() &&
                         std::string_view("=+-@\t\r").find(cell.text[0]) != std::string_view::npos;
    return formula ? "'" + cell.text : cell.text;
}

Row row_of(const Bike& bike, const Entry& entry, ExportKind kind, bool guard) {
    Row row{{"bike", bike.details.value.name}};
    if (kind == ExportKind::work) row.emplace_back("kind", kind_slug(entry.body));
    for (const auto& cell : entry_cells(entry))
        row.emplace_back(cell.heading, guarded(cell, guard));
    return row;
}

std::vector<std::string> headings_of(const std::vector<Row>& rows) {
    std::vector<std::string> headings{"bike"};
    for (const auto& row : rows) {
        for (const auto& [heading, text] : row) {
            if (std::ranges::find(headings, heading) == headings.end()) headings.push_back(heading);
        }
    }
    return headings;
}

} // namespace

std::optional<ExportKind> export_kind(std::string_view word) {
    for (const auto& [known, kind] : words_of_kinds) {
        if (known == word) return kind;
    }
    return std::nullopt;
}

std::vector<std::vector<std::string>> export_table(const std::vector<const Bike*>& bikes, ExportKind kind,
                                                   bool guard_formulas) {
    std::vector<Row> rows;
    for (const auto* bike : bikes) {
        for (const auto& logged : bike->log) {
            if (kind_of(logged.value) == kind)
                rows.push_back(row_of(*bike, logged.value, kind, guard_formulas));
        }
    }
    const auto headings = headings_of(rows);
    std::vector<std::vector<std::string>> table{headings};
    for (const auto& row : rows) {
        std::vector<std::string> cells(headings.size());
        for (const auto& [heading, text] : row)
            cells[static_cast<std::size_t>(std::ranges::find(headings, heading) - headings.begin())] = text;
        table.push_back(std::move(cells));
    }
    return table;
}

} // namespace sumpbook::compose
