// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/write/text.h"

#include "reports/plot/plot.h"
#include "reports/write/table_fit.h"
#include "reports/write/wrap.h"

#include <algorithm>
#include <array>
#include <cstdint>

namespace sumpbook::write {
namespace {

using document::Align;
using document::Severity;

/// Length in bytes of the UTF-8 character that starts with `lead`; 1 for stray bytes.
std::size_t character_length(unsigned char lead) {
    if (lead >= 0xF0) return 4;
    if (lead >= 0xE0) return 3;
    if (lead >= 0xC0) return 2;
    return 1;
}

bool is_hidden_control(std::string_view character) {
    const auto first = static_cast<unsigned char>(character[0]);
    if (character.size() == 1) return first < 0x20 || first == 0x7F || first >= 0x80;
    if (character.size() == 2) return first == 0xC2 && static_cast<unsigned char>(character[1]) < 0xA0; // C1
    // U+200E, U+200F, U+202A to U+202E, U+2066 to U+2069: direction marks and overrides
    constexpr std::array<std::string_view, 11> overrides{
        "\xE2\x80\x8E", "\xE2\x80\x8F", "\xE2\x80\xAA", "\xE2\x80\xAB", "\xE2\x80\xAC", "\xE2\x80\xAD",
        "\xE2\x80\xAE", "\xE2\x81\xA6", "\xE2\x81\xA7", "\xE2\x81\xA8", "\xE2\x81\xA9"};
    return std::ranges::find(overrides, character) != overrides.end();
}

std::string_view colour_of(Severity severity) {
    switch (severity) {
    case Severity::good:
        return "\x1B[32m";
    case Severity::caution:
        return "\x1B[33m";
    case Severity::danger:
        return "\x1B[1;31m";
    case Severity::none:
        break;
    }
    return {};
}

std::string coloured(std::string text, Severity severity, const TextStyle& style) {
    if (!style.colour || severity == Severity::none) return text;
    return std::string(colour_of(severity)) + std::move(text) + "\x1B[0m";
}

std::string padded(const std::string& text, std::size_t width, Align align) {
    const std::string blanks(width - std::min(width, columns_of(text)), ' ');
    return align == Align::right ? blanks + text : text + blanks;
}

void trim_end(std::string& line) { line.erase(line.find_last_not_of(' ') + 1); }

/// The table without columns that have a heading and nothing below it; a table without rows stays.
document::Table without_empty_columns(const document::Table& table) {
    document::Table kept;
    kept.rows.resize(table.rows.size());
    for (std::size_t i = 0; i < table.columns.size(); ++i) {
        const auto says = [&](const auto& row) { return i < row.size() && !row[i].text.empty(); };
        if (!table.rows.empty() && std::ranges::none_of(table.rows, says)) continue;
        kept.columns.push_back(table.columns[i]);
        for (std::size_t row = 0; row < table.rows.size(); ++row) {
            if (i < table.rows[row].size()) kept.rows[row].push_back(table.rows[row][i]);
        }
    }
    return kept;
}

constexpr std::size_t gap_width = 2;   // between columns
constexpr std::size_t least_fact = 20; // a fact is never narrower than this

class Writer {
public:
    explicit Writer(const TextStyle& style)
        : style_(style)
        , width_(static_cast<std::size_t>(std::max(style.width, 40))) {}
    [[nodiscard]] std::string text() && { return std::move(out_); }

    void operator()(const document::Heading& heading) {
        gap();
        const std::string text = printable(heading.text);
        out_ += text + '\n';
        if (heading.level <= 2) out_ += std::string(columns_of(text), heading.level == 1 ? '=' : '-') + '\n';
        after_heading_ = true;
    }
    void operator()(const document::Sentence& sentence) {
        if (!after_heading_) gap();
        out_ += coloured(wrapped(printable(sentence.text), width_), sentence.severity, style_) + '\n';
        after_heading_ = false;
    }
    void operator()(const document::Facts& facts) {
        if (!after_heading_) gap();
        std::size_t widest = 0;
        for (const auto& [label, text] : facts.lines)
            widest = std::max(widest, columns_of(label));
        for (const auto& [label, text] : facts.lines)
            fact(label, text, widest + 2);
        after_heading_ = false;
    }
    /// In words; the picture itself is for paper and windows.
    void operator()(const document::Figure& figure) {
        (*this)(document::Sentence{figure.plot->title + ". " + figure.plot->description});
    }
    void operator()(const document::Table& whole) {
        if (!after_heading_) gap();
        const auto table = without_empty_columns(whole);
        const auto widths = widths_of(table);
        std::vector<document::Cell> headings;
        for (const auto& column : table.columns)
            headings.push_back({column.heading, Severity::none});
        line(table, widths, headings);
        for (const auto& row : table.rows)
            line(table, widths, row);
        after_heading_ = false;
    }

private:
    /// The text beside its label, wrapped there where tables are.
    void fact(const std::string& label, const std::string& text, std::size_t indent) {
        std::vector lines{printable(text)};
        if (style_.table_width) {
            const auto room = static_cast<std::size_t>(*style_.table_width);
            lines = lines_of(lines.front(), std::max(room, indent + least_fact) - indent);
        }
        for (std::size_t i = 0; i < lines.size(); ++i)
            out_ += padded(i == 0 ? label : std::string(), indent, Align::left) + lines[i] + '\n';
    }
    [[nodiscard]] std::vector<std::size_t> widths_of(const document::Table& table) const {
        std::vector<TextColumn> columns;
        for (const auto& column : table.columns)
            columns.push_back(with_cell({}, column.heading));
        for (const auto& row : table.rows) {
            for (std::size_t i = 0; i < row.size() && i < columns.size(); ++i)
                columns[i] = with_cell(columns[i], printable(row[i].text));
        }
        if (style_.table_width) {
            const auto gaps = gap_width * (columns.empty() ? 0 : columns.size() - 1);
            const auto room = static_cast<std::size_t>(*style_.table_width);
            return fitted_widths(columns, room > gaps ? room - gaps : 0);
        }
        std::vector<std::size_t> widths;
        for (const auto& column : columns)
            widths.push_back(column.natural);
        return widths;
    }
    /// One row; of several lines where a cell is wrapped.
    void line(const document::Table& table, const std::vector<std::size_t>& widths,
              const std::vector<document::Cell>& cells) {
        std::vector<std::vector<std::string>> wrapped_cells;
        std::size_t height = 1;
        for (std::size_t i = 0; i < cells.size() && i < widths.size(); ++i) {
            const auto text = printable(cells[i].text);
            const bool fits = columns_of(text) <= widths[i];
            wrapped_cells.push_back(fits ? std::vector{text} : lines_of(text, widths[i]));
            height = std::max(height, wrapped_cells.back().size());
        }
        for (std::size_t k = 0; k < height; ++k) {
            std::string line;
            for (std::size_t i = 0; i < wrapped_cells.size(); ++i) {
                if (i != 0) line += std::string(gap_width, ' ');
                const bool there = k < wrapped_cells[i].size();
                line += coloured(padded(there ? wrapped_cells[i][k] : "", widths[i], table.columns[i].align),
                                 there ? cells[i].severity : Severity::none, style_);
            }
            trim_end(line);
            out_ += line + '\n';
        }
    }
    void gap() {
        if (!out_.empty()) out_ += '\n';
    }

    TextStyle style_;
    std::size_t width_;
    std::string out_;
    bool after_heading_ = false;
};

} // namespace

std::string printable(std::string_view text) {
    std::string out;
    while (!text.empty()) {
        const std::size_t length =
            std::min(character_length(static_cast<unsigned char>(text[0])), text.size());
        const std::string_view character = text.substr(0, length);
        text.remove_prefix(length);
        if (character == "\n" || character == "\t" || character == "\r") {
            out += ' ';
        } else if (is_hidden_control(character)) {
            out += "\xEF\xBF\xBD";
        } else {
            out += character;
        }
    }
    return out;
}

std::string text(const document::Document& document, const TextStyle& style) {
    Writer writer(style);
    for (const auto& block : document.blocks)
        std::visit(writer, block);
    return std::move(writer).text();
}

std::string plain(const document::Document& document) {
    std::string out;
    for (const auto& block : document.blocks) {
        if (const auto* table = std::get_if<document::Table>(&block)) {
            for (const auto& row : table->rows) {
                for (std::size_t i = 0; i < row.size(); ++i)
                    out += (i == 0 ? "" : "\t") + printable(row[i].text);
                out += '\n';
            }
        } else if (const auto* facts = std::get_if<document::Facts>(&block)) {
            for (const auto& [label, text] : facts->lines)
                out += label + '\t' + printable(text) + '\n';
        }
    }
    return out;
}

} // namespace sumpbook::write
