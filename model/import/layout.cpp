// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/import/layout.h"

#include "model/import/columns.h"
#include "model/import/words.h"

#include <fmt/format.h>

#include <algorithm>
#include <optional>

namespace sumpbook::import {
namespace {

struct Heading {
    char separator = ',';
    std::size_t at = 0;    ///< Which row.
    std::size_t known = 0; ///< Known headings in that row.
};

Heading find_heading(const std::vector<Row>& rows, char separator, ImportKind kind,
                     const ImportOptions& options) {
    Heading heading{.separator = separator, .at = 0, .known = 0};
    for (std::size_t i = 0; i < rows.size(); ++i) {
        const std::size_t known = known_headings(kind, rows[i].cells, options);
        if (known <= heading.known) continue;
        heading.known = known;
        heading.at = i;
    }
    return heading;
}

Table table_of(std::vector<Row> rows, const Heading& found) {
    const auto heading = rows.begin() + static_cast<std::ptrdiff_t>(found.at);
    Table table{.separator = found.separator,
                .heading_line = heading->line,
                .headings = heading->cells,
                .before = {rows.begin(), heading},
                .rows = {}};
    rows.erase(rows.begin(), heading + 1);
    table.rows = std::move(rows);
    while (!table.headings.empty() && trimmed(table.headings.back()).empty())
        table.headings.pop_back();
    return table;
}

tl::unexpected<Problem> no_heading(ImportKind kind) {
    std::vector<std::string> slugs;
    for (const auto& field : fields_of(kind))
        slugs.push_back(field.slug);
    return refuse(fmt::format("No line with known headings was found. Known are {}; name others with "
                              "--map \"Heading=field\".",
                              listed(slugs)));
}

} // namespace

Result<Table> find_table(std::string_view text, ImportKind kind, const ImportOptions& options) {
    const std::string_view separators = ",;\t|";
    Heading best;
    std::optional<Problem> first_problem;
    for (const char separator :
         options.separator ? std::string(1, *options.separator) : std::string(separators)) {
        const auto rows = split_rows(text, separator, heading_search_rows);
        if (rows) {
            const auto heading = find_heading(*rows, separator, kind, options);
            if (heading.known > best.known) best = heading;
        } else if (!first_problem) {
            first_problem = rows.error();
        }
    }
    if (best.known == 0 && first_problem) return pass_on(*first_problem);
    if (best.known == 0) return no_heading(kind);
    auto rows = split_rows(text, best.separator);
    if (!rows) return pass_on(rows.error());
    return table_of(std::move(*rows), best);
}

} // namespace sumpbook::import
