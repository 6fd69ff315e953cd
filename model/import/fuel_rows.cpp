// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/import/entry_rows.h"

#include "model/garage/fuel_total.h"
#include "model/import/words.h"

#include <fmt/format.h>

#include <algorithm>

namespace sumpbook::import {
namespace {

struct Written {
    bool yes = false;
    bool no = false;
};

/// Full or part are understood under "full" only: "part" under "part fill" would mean its opposite.
std::string_view list_for(std::string_view field) { return field == "full" ? "full-part" : "yes-no"; }

Written written_in(const Table& table, const Column& column) {
    Written found;
    for (const auto& row : table.rows) {
        if (column.index >= row.cells.size()) continue;
        const auto cell = trimmed(row.cells[column.index]);
        if (cell.empty()) continue;
        if (const auto value = yes_no_in(cell, list_for(column.field->slug)))
            (*value ? found.yes : found.no) = true;
    }
    return found;
}

/// The typed total stays; a total that the typed price and volume contradict is doubted.
void compare_total(RowReader& reader, const Fuel& fuel, const Entry& entry) {
    const auto product = contradicting_product(fuel, entry.paid);
    if (!product) return;
    reader.doubt("total", fmt::format("{}, price x volume; the total as typed counts until this is settled",
                                      text_of(*product)));
}

/// Both columns are filled and say different things.
void compare_part_fill(RowReader& reader, bool full) {
    if (const auto part = reader.yes_no("part fill"); part && *part == full)
        reader.doubt("part fill", fmt::format("{}, as the column for full fills says", full ? "no" : "yes"));
}

/// Whether the fill was full. What cannot be told counts as a part fill: that only joins two stretches of
/// road, while a part fill taken for a full one gives a wrong consumption.
bool read_full(RowReader& reader, const FillMarking& marking) {
    if (!marking.known) return true;
    const bool by_full = reader.context().columns.of("full") != nullptr;
    const std::string_view field = by_full ? "full" : "part fill";
    if (!reader.has(field)) {
        if (marking.blank_is_full) return *marking.blank_is_full;
        reader.doubt(field, "yes or no, as in the other rows; counted as a part fill until this is settled");
        return false;
    }
    const auto value = reader.yes_no(field, list_for(field));
    if (!value) return false;
    if (by_full) compare_part_fill(reader, *value);
    return by_full ? *value : !*value;
}

} // namespace

FillMarking find_fill_marking(const Table& table, const Columns& columns) {
    const Column* full = columns.of("full");
    const Column* part = columns.of("part fill");
    if (full == nullptr && part == nullptr) return {};
    const Written written = written_in(table, full != nullptr ? *full : *part);
    FillMarking marking{.blank_is_full = {}, .known = true};
    if (written.yes && written.no) return marking;
    const bool blank_is_yes = full != nullptr ? !written.yes : written.no; // nothing written: full
    marking.blank_is_full = full != nullptr ? blank_is_yes : !blank_is_yes;
    return marking;
}

RowVerdict read_fuel(RowReader& reader, Entry& entry, const FillMarking& marking) {
    const bool anything = reader.has("volume") || reader.has("total") || reader.has("price per unit");
    if (!anything) return {.holds_entry = false, .reason = "it has neither a volume nor a price"};
    Fuel fuel;
    fuel.volume = reader.volume("volume");
    if (!reader.has("volume")) reader.doubt("volume", "a volume");
    fuel.price = reader.unit_price("price per unit");
    entry.paid = reader.price("total");
    fuel.full = read_full(reader, marking);
    const bool missed_typed = reader.has("missed");
    fuel.missed_before = reader.yes_no("missed").value_or(missed_typed);
    fuel.octane = reader.number_from_zero("octane");
    fuel.trip = reader.distance("trip");
    compare_total(reader, fuel, entry);
    entry.body = std::move(fuel);
    return {};
}

} // namespace sumpbook::import
