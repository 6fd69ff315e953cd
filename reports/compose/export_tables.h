// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/garage.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace sumpbook::compose {

/// The lists that entries are written out in; the same words as for reading lists in.
enum class ExportKind { fuel, work, costs, readings, samples };
/// By its word, "fuel"; absent for any other.
[[nodiscard]] std::optional<ExportKind> export_kind(std::string_view word);

/// One row an entry with a column for every field that any of them has; the first row is the heading. What an
/// import reads back to the same entries. With `guard_formulas` text that a spreadsheet would take for a
/// formula gets an apostrophe in front.
[[nodiscard]] std::vector<std::vector<std::string>> export_table(const std::vector<const Bike*>& bikes,
                                                                 ExportKind kind, bool guard_formulas);

} // namespace sumpbook::compose
