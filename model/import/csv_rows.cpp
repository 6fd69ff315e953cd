// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/import/csv_rows.h"

#include <fmt/format.h>

#include <algorithm>

namespace sumpbook::import {
namespace {

/// Walks over the text once; `line_` follows the line breaks, also those inside quotes.
class Splitter {
public:
    Splitter(std::string_view text, char separator)
        : text_(text)
        , separator_(separator) {}

    Result<std::vector<Row>> run(std::size_t most) {
        std::vector<Row> rows;
        std::size_t memory = 0;
        while (at_ < text_.size() && rows.size() < most) {
            auto row = next_row();
            if (!row) return pass_on(row.error());
            if (is_blank(*row)) continue;
            memory += memory_of(*row);
            if (memory > memory_allowed(text_.size())) return too_many_rows(row->line);
            rows.push_back(std::move(*row));
        }
        return rows;
    }

private:
    static Place place(std::size_t line) { return {.file = {}, .line = line, .column = {}, .text = {}}; }

    [[nodiscard]] bool at_line_end() const {
        return at_ >= text_.size() || text_[at_] == '\n' || text_[at_] == '\r';
    }

    Result<Row> next_row() {
        Row row{.line = line_, .cells = {}, .stray_quotes = {}};
        while (true) {
            if (auto read = next_cell(row); !read) return pass_on(read.error());
            if (row.cells.size() > most_cells_a_row)
                return refuse("This line has more than 1000 cells: that is no table of entries.",
                              place(row.line));
            if (at_line_end()) break;
            ++at_; // the separator
        }
        take_line_break();
        row.cells.shrink_to_fit(); // else up to twice the memory for a million of them
        return row;
    }

    /// Takes CR LF, LF or CR as one line break and returns its text.
    std::string_view take_line_break() {
        if (at_ >= text_.size()) return {};
        const std::size_t length = text_.substr(at_).starts_with("\r\n") ? 2 : 1;
        const auto taken = text_.substr(at_, length);
        at_ += length;
        ++line_;
        return taken;
    }

    Result<void> next_cell(Row& row) {
        std::string cell;
        if (at_ < text_.size() && text_[at_] == '"') {
            if (auto read = quoted(cell); !read) return read;
            if (!at_line_end() && text_[at_] != separator_) { // text after the closing quote
                cell = '"' + cell + '"' + bare();
                row.stray_quotes.push_back(row.cells.size());
            }
        } else {
            cell = bare();
            if (cell.find('"') != std::string::npos) row.stray_quotes.push_back(row.cells.size());
        }
        row.cells.push_back(std::move(cell));
        return {};
    }

    std::string bare() {
        const std::size_t start = at_;
        while (!at_line_end() && text_[at_] != separator_)
            ++at_;
        return std::string(text_.substr(start, at_ - start));
    }

    Result<void> quoted(std::string& cell) {
        const std::size_t opened = line_;
        ++at_;
        while (at_ < text_.size()) {
            if (text_[at_] == '"') {
                ++at_;
                if (at_ >= text_.size() || text_[at_] != '"') return {};
                cell.push_back('"');
                ++at_;
            } else if (at_line_end()) {
                cell += take_line_break();
            } else {
                cell.push_back(text_[at_++]);
            }
        }
        return refuse("A double quote opens a cell on this line and is never closed.", place(opened));
    }

    std::string_view text_;
    char separator_;
    std::size_t at_ = 0;
    std::size_t line_ = 1;
};

} // namespace

bool is_blank(const Row& row) {
    return std::all_of(row.cells.begin(), row.cells.end(), [](const std::string& cell) {
        return cell.find_first_not_of(" \t") == std::string::npos;
    });
}

tl::unexpected<Problem> too_many_rows(std::size_t line) {
    return refuse("The file has more rows, or more cells that cannot be read, than one import takes. Split it "
                  "into several files.",
                  {.file = {}, .line = line, .column = {}, .text = {}});
}

Result<std::vector<Row>> split_rows(std::string_view text, char separator, std::size_t most) {
    return Splitter(text, separator).run(most);
}

} // namespace sumpbook::import
