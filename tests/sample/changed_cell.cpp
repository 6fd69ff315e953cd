// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/sample/changed_cell.h"

#include <stdexcept>
#include <vector>

namespace sumpbook::sample {
namespace {

struct Span {
    std::size_t begin = 0;
    std::size_t end = 0;
};

/// First and last byte of a line, without its end.
Span line_span(const std::string& csv, std::size_t line) {
    std::size_t begin = 0;
    for (std::size_t n = 1; n < line; ++n) {
        const auto end = csv.find('\n', begin);
        if (end == std::string::npos || end + 1 == csv.size())
            throw std::runtime_error("there is no line " + std::to_string(line));
        begin = end + 1;
    }
    return {begin, std::min(csv.find('\n', begin), csv.size())};
}

std::vector<Span> cell_spans(const std::string& csv, Span line, char separator) {
    std::vector<Span> cells{{line.begin, line.end}};
    bool quoted = false;
    for (std::size_t at = line.begin; at < line.end; ++at) {
        if (csv[at] == '"') quoted = !quoted;
        if (csv[at] != separator || quoted) continue;
        cells.back().end = at;
        cells.push_back({at + 1, line.end});
    }
    return cells;
}

std::string unquoted(const std::string& cell) {
    if (cell.size() < 2 || cell.front() != '"') return cell;
    std::string text;
    for (std::size_t at = 1; at + 1 < cell.size(); ++at) {
        if (cell[at] == '"') ++at; // a doubled quote
        text += cell[at];
    }
    return text;
}

std::string quoted_where_needed(const std::string& text, char separator) {
    if (text.find(separator) == std::string::npos && text.find('"') == std::string::npos) return text;
    std::string quoted = "\"";
    for (const char c : text)
        quoted += c == '"' ? std::string("\"\"") : std::string(1, c);
    return quoted + "\"";
}

char separator_of(const std::string& csv) {
    return csv.substr(0, csv.find('\n')).find(';') == std::string::npos ? ',' : ';';
}

std::string text_of(const std::string& csv, Span span) {
    return unquoted(csv.substr(span.begin, span.end - span.begin));
}

Span find_cell(const std::string& csv, const CellPlace& place) {
    const char separator = separator_of(csv);
    const auto headings = cell_spans(csv, line_span(csv, 1), separator);
    const auto cells = cell_spans(csv, line_span(csv, place.line), separator);
    for (std::size_t i = 0; i < headings.size() && i < cells.size(); ++i) {
        if (text_of(csv, headings[i]) == place.column) return cells[i];
    }
    throw std::runtime_error("there is no column \"" + place.column + "\"");
}

} // namespace

std::string cell_at(const std::string& csv, const CellPlace& place) {
    return text_of(csv, find_cell(csv, place));
}

std::string with_cell(const std::string& csv, const CellPlace& place, const std::string& text) {
    const Span cell = find_cell(csv, place);
    return csv.substr(0, cell.begin) + quoted_where_needed(text, separator_of(csv)) + csv.substr(cell.end);
}

} // namespace sumpbook::sample
