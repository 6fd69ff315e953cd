// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/quantity/data_table.h"

#include <stdexcept>
#include <utility>

namespace sumpbook {
namespace {

/// The cells of one line: a doubled quote inside quotes is one quote.
std::vector<std::string> cells_of(std::string_view line) {
    std::vector<std::string> cells(1);
    bool quoted = false;
    for (std::size_t i = 0; i < line.size(); ++i) {
        if (line[i] == '"' && quoted && i + 1 < line.size() && line[i + 1] == '"') {
            cells.back() += line[++i];
        } else if (line[i] == '"') {
            quoted = !quoted;
        } else if (line[i] == ',' && !quoted) {
            cells.emplace_back();
        } else {
            cells.back() += line[i];
        }
    }
    return cells;
}

std::string_view take_line(std::string_view& rest) {
    const auto end = rest.find('\n');
    std::string_view line = rest.substr(0, end);
    rest = end == std::string_view::npos ? std::string_view{} : rest.substr(end + 1);
    if (line.ends_with('\r')) line.remove_suffix(1);
    return line;
}

} // namespace

const std::string& DataRow::operator[](std::string_view column) const {
    const auto found = cells_.find(column);
    if (found == cells_.end()) throw std::logic_error("data file without column " + std::string(column));
    return found->second;
}

std::optional<Decimal> DataRow::number(std::string_view column) const {
    const std::string& cell = (*this)[column];
    if (cell.empty()) return std::nullopt;
    const auto number = Decimal::parse(cell);
    if (!number) throw std::logic_error("data file: " + std::string(column) + " holds " + cell);
    return *number;
}

Decimal DataRow::required(std::string_view column) const {
    const auto value = number(column);
    if (!value) throw std::logic_error("data file: " + std::string(column) + " is empty");
    return *value;
}

std::vector<DataRow> read_data_table(std::string_view csv) {
    std::vector<std::string> heading;
    std::vector<DataRow> rows;
    while (!csv.empty()) {
        const std::string_view line = take_line(csv);
        if (line.empty() || line.front() == '#') continue;
        std::vector<std::string> cells = cells_of(line);
        if (heading.empty()) {
            heading = std::move(cells);
            continue;
        }
        if (cells.size() != heading.size()) throw std::logic_error("data file line: " + std::string(line));
        std::map<std::string, std::string, std::less<>> by_name;
        for (std::size_t i = 0; i < cells.size(); ++i)
            by_name[heading[i]] = std::move(cells[i]);
        rows.emplace_back(std::move(by_name));
    }
    return rows;
}

} // namespace sumpbook
