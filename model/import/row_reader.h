// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/garage.h"
#include "model/garage/slugs.h"
#include "model/import/cell_values.h"
#include "model/import/columns.h"
#include "model/import/csv_rows.h"
#include "model/import/marks.h"
#include "model/import/value_words.h"

#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

namespace sumpbook::import {

/// Everything the rows of a file have in common.
struct RowContext {
    const std::string& file;
    ImportKind kind;
    const Columns& columns;
    const Marks& marks;
    const Garage& garage;
    Date today;
};

/// Reads the cells of one row for one bike. A blank cell and a missing column are absent; a cell that cannot
/// be read is absent too and stands in `doubts`. Nothing typed is lost: `doubt_unused` names every filled
/// cell that nobody asked for.
class RowReader {
public:
    RowReader(const RowContext& context, const Row& row, const Bike& bike);

    [[nodiscard]] const RowContext& context() const { return context_; }
    [[nodiscard]] const Row& row() const { return row_; }
    [[nodiscard]] const Bike& bike() const { return bike_; }
    [[nodiscard]] const std::vector<Doubt>& doubts() const { return doubts_; }

    /// True where the cell holds something.
    [[nodiscard]] bool has(std::string_view field) const { return !cell(field).empty(); }
    /// The cell, trimmed.
    [[nodiscard]] std::string_view cell(std::string_view field) const;

    std::optional<std::string> text(std::string_view field);
    std::optional<Date> date(std::string_view field);
    std::optional<Decimal> number(std::string_view field);
    /// From 0 to 1: a level between the marks.
    std::optional<Decimal> fraction(std::string_view field);
    std::optional<Decimal> number_from_zero(std::string_view field);
    std::optional<std::uint32_t> whole(std::string_view field);
    std::optional<WrittenDistance> distance(std::string_view field);
    std::optional<WrittenVolume> volume(std::string_view field);
    std::optional<Money> money(std::string_view field);
    /// The same, 0 or more: prices.
    std::optional<Money> price(std::string_view field);
    std::optional<UnitPrice> unit_price(std::string_view field);
    std::optional<bool> yes_no(std::string_view field, std::string_view list = "yes-no");
    std::optional<SampleValue> sample_value(std::string_view field);
    /// A word of a list of value_words.csv.
    std::optional<std::string> word(std::string_view field, std::string_view list);
    template <class Enum>
    std::optional<Enum> choice(std::string_view field, std::string_view list) {
        const auto found = word(field, list);
        if (!found) return std::nullopt;
        return from_slug<Enum>(*found).value();
    }

    /// How the cells of a field are read here.
    [[nodiscard]] CellRules rules_of(std::string_view field) const;
    /// Adds a doubt about a cell: what stands there, and what was expected.
    void doubt(std::string_view field, std::string expected);
    /// Adds a doubt about the row as a whole.
    void doubt_row(std::string text, std::string expected);
    /// Marks a cell as dealt with.
    void use(std::string_view field) { used_.insert(std::string(field)); }
    /// A doubt for each filled cell of the row that was not used. `what` is the kind: "top-up".
    void doubt_unused(std::string_view what);

private:
    template <class Read>
    auto read(std::string_view field, std::string_view noun, Read from_cell);
    void add_row_currency(CellRules& rules) const;

    const RowContext& context_;
    const Row& row_;
    const Bike& bike_;
    std::vector<Doubt> doubts_;
    std::set<std::string, std::less<>> used_;
};

} // namespace sumpbook::import
