// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/import/layout.h"

#include "model/import/columns.h"
#include "model/import/words.h"

#include <fmt/format.h>

#include <algorithm>
#include <optional>

namespace sumpbook::import {
namespace {

struct Candidate {
    char separator = ',';
    std::vector<Row> rows;
    std::size_t heading_at = 0;
    std::size_t known = 0; ///< Known headings in that row.
};

void find_heading(Candidate& candidate, ImportKind kind, const ImportOptions& options) {
    const std::size_t searched = std::min(candidate.rows.size(), heading_search_rows);
    for (std::size_t i = 0; i < searched; ++i) {
        const std::size_t known = known_headings(kind, candidate.rows[i].cells, options);
        if (known <= candidate.known) continue;
        candidate.known = known;
        candidate.heading_at = i;
    }
}

Table table_of(Candidate candidate) {
    const auto heading = candidate.rows.begin() + static_cast<std::ptrdiff_t>(candidate.heading_at);
    Table table{
        .separator = candidate.separator,
        .heading_line = heading->line,
        .headings = heading->cells,
        .before = {candidate.rows.begin(), heading},
        .rows = {std::make_move_iterator(heading + 1), std::make_move_iterator(candidate.rows.end())}};
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
    std::optional<Candidate> best;
    std::optional<Problem> first_problem;
    for (const char separator :
         options.separator ? std::string(1, *options.separator) : std::string(separators)) {
        auto rows = split_rows(text, separator);
        if (!rows) {
            if (!first_problem) first_problem = rows.error();
            continue;
        }
        Candidate candidate{.separator = separator, .rows = std::move(*rows), .heading_at = 0, .known = 0};
        find_heading(candidate, kind, options);
        if (!best || candidate.known > best->known) best = std::move(candidate);
    }
    if (best && best->known > 0) return table_of(std::move(*best));
    if (first_problem) return pass_on(*first_problem);
    return no_heading(kind);
}

} // namespace sumpbook::import
