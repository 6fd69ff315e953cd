// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/import/column_unit.h"
#include "model/import/fields.h"
#include "model/import/request.h"

#include <optional>
#include <string>
#include <vector>

namespace sumpbook::import {

/// One column of the file and what it was taken for.
struct Column {
    std::size_t index = 0;        ///< From 0.
    std::string heading;          ///< As typed, trimmed.
    const Field* field = nullptr; ///< nullptr: kept out.
    ColumnUnit unit;
    bool stated = false; ///< The owner's --map decided.
};

struct Columns {
    std::vector<Column> all;
    std::vector<Question> questions;
    /// The column of a field; nullptr where the file has none.
    [[nodiscard]] const Column* of(std::string_view field_slug) const;
};

/// How many cells of a row are headings of this import: known words, or named by `map`.
[[nodiscard]] std::size_t known_headings(ImportKind kind, const std::vector<std::string>& cells,
                                         const ImportOptions& options);

/// Proposes a field for every heading: the owner's map first, then the words of columns.csv. A heading
/// that can be two fields takes the one that no other column has, else the program asks; two columns for
/// one field, a unit in brackets that is not known, and bare gallons are questions too. Refused (wrong
/// usage): a map or unit for a heading or field that does not exist.
[[nodiscard]] Result<Columns> propose_columns(ImportKind kind, const std::vector<std::string>& headings,
                                              const ImportOptions& options, const Currency& garage);

} // namespace sumpbook::import
