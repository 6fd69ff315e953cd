// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <memory>
#include <string>
#include <utility>
#include <variant>
#include <vector>

namespace sumpbook::plot {
struct Plot; // reports/plot/plot.h, for those who draw it
}

namespace sumpbook::document {

/// How much something matters; shown by colour where there is any, and always by a word as well.
/// ISO 22324: green safe, yellow caution, red danger.
enum class Severity { none, good, caution, danger };

enum class Align { left, right };

struct Heading {
    int level = 1; ///< 1 the document, 2 a section, 3 a part of one.
    std::string text;
};

/// One or more sentences to the owner, wrapped as a paragraph.
struct Sentence {
    std::string text;
    Severity severity = Severity::none;
};

struct Column {
    std::string heading;
    Align align = Align::left;
};

struct Cell {
    std::string text;
    Severity severity = Severity::none;
};

/// Every row has one cell a column.
struct Table {
    std::vector<Column> columns;
    std::vector<std::vector<Cell>> rows;
};

/// Labelled facts, one a line: "Odometer   48 210 km".
struct Facts {
    std::vector<std::pair<std::string, std::string>> lines;
};

/// A picture. Never null, never empty: where there is nothing to see, a sentence says why.
struct Figure {
    std::shared_ptr<const plot::Plot> plot;
};

using Block = std::variant<Heading, Sentence, Table, Facts, Figure>;

/// A report as a plain structure; `write` and `render` turn it into bytes.
struct Document {
    std::vector<Block> blocks;

    Document& heading(std::string text, int level = 2) {
        blocks.emplace_back(Heading{level, std::move(text)});
        return *this;
    }
    Document& sentence(std::string text, Severity severity = Severity::none) {
        blocks.emplace_back(Sentence{std::move(text), severity});
        return *this;
    }
    Document& table(Table table) {
        blocks.emplace_back(std::move(table));
        return *this;
    }
    Document& facts(Facts facts) {
        blocks.emplace_back(std::move(facts));
        return *this;
    }
    Document& figure(std::shared_ptr<const plot::Plot> plot) {
        blocks.emplace_back(Figure{std::move(plot)});
        return *this;
    }
    Document& append(Document other) {
        for (auto& block : other.blocks)
            blocks.push_back(std::move(block));
        return *this;
    }
};

} // namespace sumpbook::document
