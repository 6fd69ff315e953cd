// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/entry.h"
#include "model/import/layout.h"
#include "model/import/row_reader.h"

#include <optional>
#include <string>
#include <vector>

namespace sumpbook::import {

/// What a whole column says about its blank cells, found before the rows are read.
struct FillMarking {
    std::optional<bool> blank_is_full; ///< Absent: blank cells are doubted.
    bool known = false;                ///< Some column says whether a fill was full.
};

/// Looks at the columns "full" and "part fill": where only yes (a cross, a tick) is ever written, blank is
/// no, and the other way round; where both are written a blank cell says nothing. DESIGN.
[[nodiscard]] FillMarking find_fill_marking(const Table& table, const Columns& columns);

// Each turns the cells of one row into the entry's own fields; date, odometer and the like are already
// read. False, with the reason: the row holds nothing of its kind and stays out.

struct RowVerdict {
    bool holds_entry = true;
    std::string reason;
};

/// A typed total wins over price x volume; where they differ by more than the rounding of the typed figures
/// explains, the total is doubted and stays as typed.
RowVerdict read_fuel(RowReader& reader, Entry& entry, const FillMarking& marking);
/// Kind (blank: work) decides which columns belong to the row.
RowVerdict read_work(RowReader& reader, Entry& entry);
RowVerdict read_cost(RowReader& reader, Entry& entry);
RowVerdict read_reading(RowReader& reader, Entry& entry);
RowVerdict read_sample(RowReader& reader, Entry& entry);

/// An entry of the work import that is not a job: oil-change, top-up, fit, ...
RowVerdict read_other_kind(RowReader& reader, Entry& entry, std::string_view kind);

/// Date, odometer, hours, note, place, who, evidence, visit. False where there is no date to be had.
RowVerdict read_common(RowReader& reader, Entry& entry);

} // namespace sumpbook::import
