// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/write/html.h"

#include "reports/plot/plot.h"
#include "reports/write/html_style.h"
#include "reports/write/markup.h"
#include "reports/write/qr_code.h"
#include "reports/write/svg.h"

#include <algorithm>
#include <array>

namespace sumpbook::write {
namespace {

using document::Align;
using document::Severity;

struct Shown {
    std::string_view css; ///< Name of the class.
    std::string_view mark;
    std::string_view word;
};

/// ISO 22324: green safe, yellow caution, red danger. The marks are those that oil verdicts use.
Shown shown(Severity severity) {
    switch (severity) {
    case Severity::good:
        return {"good", "●", "Good"};
    case Severity::caution:
        return {"caution", "▲", "Caution"};
    case Severity::danger:
        return {"danger", "■", "Danger"};
    case Severity::none:
        break;
    }
    return {};
}

bool starts_with_mark(std::string_view text) {
    constexpr std::array<std::string_view, 4> marks{"●", "▲", "■", "○"};
    return std::ranges::any_of(marks, [&](std::string_view mark) { return text.starts_with(mark); });
}

std::string mark_of(Severity severity, std::string_view text) {
    if (severity == Severity::none || starts_with_mark(text)) return {};
    return "<span class=\"mark\">" + std::string(shown(severity).mark) + "</span> ";
}

bool is_digit(char c) { return c >= '0' && c <= '9'; }

/// As markup; "48 210" is not broken over two lines.
std::string prose(std::string_view text) {
    const std::string escaped = markup(text);
    std::string out;
    for (std::size_t i = 0; i < escaped.size(); ++i) {
        const bool inside = i > 0 && i + 1 < escaped.size() && escaped[i] == ' ' &&
                            is_digit(escaped[i - 1]) && is_digit(escaped[i + 1]);
        out += inside ? std::string("\xC2\xA0") : std::string(1, escaped[i]);
    }
    return out;
}

std::string class_attribute(std::string_view names) {
    return names.empty() ? std::string{} : " class=\"" + std::string(names) + "\"";
}

/// Short cells (dates, names, amounts) stay on one line.
constexpr std::size_t short_cell_bytes = 18;

std::string cell_classes(const document::Cell& cell, Align align) {
    std::string names(shown(cell.severity).css);
    if (align == Align::right) names += names.empty() ? "number" : " number";
    const bool is_short = names.empty() && !cell.text.empty() && cell.text.size() <= short_cell_bytes;
    return is_short ? "short" : names;
}

class Writer {
public:
    [[nodiscard]] std::string text() && { return std::move(out_); }

    void operator()(const document::Heading& heading) {
        const int level = std::clamp(heading.level, titled_ ? 2 : 1, 6);
        titled_ = true;
        last_heading_ = markup(heading.text);
        const std::string tag = "h" + std::to_string(level);
        out_ += "<" + tag + ">" + last_heading_ + "</" + tag + ">\n";
    }
    void operator()(const document::Sentence& sentence) {
        const auto how = shown(sentence.severity);
        out_ += "<p" + class_attribute(how.css) + ">" + mark_of(sentence.severity, sentence.text);
        if (sentence.severity != Severity::none && !starts_with_mark(sentence.text))
            out_ += "<strong>" + std::string(how.word) + ".</strong> ";
        out_ += prose(sentence.text) + "</p>\n";
    }
    void operator()(const document::Facts& facts) {
        if (facts.lines.empty()) return;
        out_ += "<dl>\n";
        for (const auto& [label, text] : facts.lines)
            out_ += "<div><dt>" + markup(label) + "</dt><dd>" + prose(text) + "</dd></div>\n";
        out_ += "</dl>\n";
    }
    void operator()(const document::Table& table) {
        // Reached with the keyboard too, so that what does not fit can be scrolled to.
        out_ += "<div class=\"scroll\" role=\"group\" tabindex=\"0\" aria-label=\"Table: " + last_heading_ +
                "\">\n<table>\n<thead><tr>";
        for (const auto& column : table.columns)
            out_ += "<th scope=\"col\"" + class_attribute(cell_classes({}, column.align)) + ">" +
                    markup(column.heading) + "</th>";
        out_ += "</tr></thead>\n<tbody>\n";
        for (const auto& row : table.rows)
            add_row(table, row);
        out_ += "</tbody>\n</table>\n</div>\n";
    }
    void operator()(const document::Figure& figure) {
        ++figures_;
        out_ += "<figure>\n" + svg(*figure.plot, "picture-" + std::to_string(figures_)) + "<figcaption>" +
                prose(figure.plot->description) + "</figcaption>\n</figure>\n";
    }

private:
    void add_row(const document::Table& table, const std::vector<document::Cell>& row) {
        out_ += "<tr>";
        for (std::size_t i = 0; i < row.size() && i < table.columns.size(); ++i) {
            const auto& cell = row[i];
            out_ += "<td" + class_attribute(cell_classes(cell, table.columns[i].align)) + ">" +
                    mark_of(cell.severity, cell.text) + prose(cell.text) + "</td>";
        }
        out_ += "</tr>\n";
    }

    std::string out_;
    std::string last_heading_;
    bool titled_ = false; ///< The one h1 is written.
    int figures_ = 0;
};

std::string title_of(const document::Document& document) {
    for (const auto& block : document.blocks) {
        if (const auto* heading = std::get_if<document::Heading>(&block)) return heading->text;
    }
    return "Sumpbook";
}

std::string head(const std::string& title) {
    return "<!DOCTYPE html>\n<html xmlns=\"http://www.w3.org/1999/xhtml\" lang=\"en\">\n<head>\n"
           "<meta charset=\"utf-8\"/>\n"
           "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src "
           "'unsafe-inline'; base-uri 'none'; form-action 'none'\"/>\n"
           "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"/>\n"
           "<meta name=\"color-scheme\" content=\"light dark\"/>\n"
           "<meta name=\"referrer\" content=\"no-referrer\"/>\n<title>" +
           markup(title) + "</title>\n<style>\n" + std::string(html_style()) + std::string(svg_style()) +
           "</style>\n</head>\n<body>\n<main>\n";
}

} // namespace

std::string html(const document::Document& document, const std::optional<plot::QrCode>& code) {
    Writer writer;
    for (const auto& block : document.blocks)
        std::visit(writer, block);
    std::string text = std::move(writer).text();
    if (code)
        text += "<figure class=\"code\">\n" + qr_svg(*code, "QR code of the fingerprint") +
                "<figcaption>" + std::string(plot::qr_caption) + "</figcaption>\n</figure>\n";
    return head(title_of(document)) + text + "</main>\n</body>\n</html>\n";
}

} // namespace sumpbook::write
