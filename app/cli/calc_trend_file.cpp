// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/calc_trend_file.h"

#include "model/import/csv_rows.h"

#include <optional>

namespace sumpbook::cli {
namespace {

/// Without blanks round it, in small letters.
std::string plain(std::string_view cell) {
    std::string text;
    for (const char c : cell) {
        if (c != ' ' && c != '\t') text += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    }
    return text;
}

std::optional<std::size_t> column_named(const import::Row& heading, std::string_view name) {
    for (std::size_t i = 0; i < heading.cells.size(); ++i) {
        if (plain(heading.cells[i]) == name) return i;
    }
    return std::nullopt;
}

/// The mark of the first line that separates columns.
char separator_of(std::string_view csv) {
    const std::string_view first_line = csv.substr(0, csv.find_first_of("\r\n"));
    for (const char separator : {';', '\t'}) {
        if (first_line.find(separator) != std::string_view::npos) return separator;
    }
    return ',';
}

Result<double> number_in(const import::Row& row, std::size_t column, const char* name,
                         const std::string& file, DecimalMark mark) {
    const std::string text = column < row.cells.size() ? row.cells[column] : std::string{};
    const auto number = read_number(text, mark);
    if (number) return number->to_double();
    Problem problem = number.error();
    problem.place = {.file = file, .line = row.line, .column = name, .text = text};
    return pass_on(std::move(problem));
}

} // namespace

Result<PairedColumns> read_paired_columns(std::string_view csv, const std::string& file, DecimalMark mark) {
    const char separator = separator_of(csv);
    if (separator == ',') mark = DecimalMark::point;
    const auto rows = import::split_rows(csv, separator);
    if (!rows) return pass_on(rows.error());
    const auto x = rows->empty() ? std::nullopt : column_named(rows->front(), "x");
    const auto y = rows->empty() ? std::nullopt : column_named(rows->front(), "y");
    if (!x || !y) {
        return refuse("The first line must name two columns x and y, such as: x,y",
                      {.file = file, .line = 1, .column = {}, .text = {}});
    }
    PairedColumns columns;
    for (auto row = rows->begin() + 1; row != rows->end(); ++row) {
        if (import::is_blank(*row)) continue;
        const auto at_x = number_in(*row, *x, "x", file, mark);
        if (!at_x) return pass_on(at_x.error());
        const auto at_y = number_in(*row, *y, "y", file, mark);
        if (!at_y) return pass_on(at_y.error());
        columns.xs.push_back(*at_x);
        columns.ys.push_back(*at_y);
    }
    return columns;
}

} // namespace sumpbook::cli
