// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/import/csv_rows.h"
#include "model/import/request.h"

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace sumpbook::import {

/// A file taken apart into its heading and its rows.
struct Table {
    char separator = ',';
    std::size_t heading_line = 0;
    std::vector<std::string> headings;
    std::vector<Row> before; ///< What stands above the heading; it is shown and kept out.
    std::vector<Row> rows;   ///< Below the heading, blank rows left out.
};

/// The heading is looked for in this many rows. DESIGN: a title, an address and a few remarks fit.
inline constexpr std::size_t heading_search_rows = 40;

/// Tries the separators comma, semicolon, tab and bar (or the stated one) and takes the one under which a
/// row has the most known headings; of several such rows the first. Refused where no row has one: the
/// sentence names the headings that are looked for.
[[nodiscard]] Result<Table> find_table(std::string_view text, ImportKind kind, const ImportOptions& options);

} // namespace sumpbook::import
