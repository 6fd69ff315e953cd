// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/import/plan_text.h"

#include "model/import/entry_text.h"

#include <fmt/format.h>

namespace sumpbook::import {
namespace {

std::string counted(std::size_t number, std::string_view one, std::string_view many) {
    return fmt::format("{} {}", number, number == 1 ? one : many);
}

std::string on_one_line(std::string text) {
    for (char& c : text)
        if (static_cast<unsigned char>(c) < 0x20 || c == 0x7F) c = ' ';
    return text;
}

std::string how_decided(bool stated, std::size_t first, std::string_view says_first, std::size_t second,
                        std::string_view says_second) {
    if (stated) return "as stated";
    return fmt::format("{} {}, {} {}", counted(first, "cell has", "cells have"), says_first, second,
                       says_second);
}

std::string decimal_line(const Marks& marks) {
    if (marks.decimal == DecimalMark::unknown)
        return marks.decimal_votes.ambiguous > 0 ? "decimal mark: open" : "decimal mark: no cell needs one";
    const auto& votes = marks.decimal_votes;
    return fmt::format("decimal mark: {} ({})", name_of(marks.decimal),
                       how_decided(marks.decimal_stated, votes.first, "a point", votes.second, "a comma"));
}

std::string order_line(const Marks& marks) {
    if (marks.order == DateOrder::unknown)
        return marks.order_votes.ambiguous > 0 ? "dates: open" : "dates: each has one reading only";
    const auto& votes = marks.order_votes;
    return fmt::format(
        "dates: {} ({})", name_of(marks.order),
        how_decided(marks.order_stated, votes.first, "the day first", votes.second, "the month first"));
}

std::string column_line(const Column& column) {
    const std::string heading = on_one_line(column.heading);
    if (column.field == nullptr) return fmt::format("column {} \"{}\": kept out", column.index + 1, heading);
    const std::string unit = text_of(column.unit, column.field->type);
    const std::string_view joint =
        column.field->type == FieldType::unit_price && !column.unit.currency ? " " : " in ";
    return fmt::format("column {} \"{}\": {}{}{}", column.index + 1, heading, column.field->slug,
                       unit.empty() ? "" : std::string(joint) + unit, column.stated ? " (as stated)" : "");
}

std::string known_words(const Known& known) {
    if (known.line) return fmt::format("the same as line {}", *known.line);
    if (known.corrected_to)
        return fmt::format("there already as {}, since corrected to {}", known.id, *known.corrected_to);
    if (known.withdrawn) return fmt::format("there already as {}, since withdrawn", known.id);
    return "the same as entry " + known.id;
}

} // namespace

std::vector<std::string> layout_lines(const ImportPlan& plan) {
    const auto& layout = plan.layout;
    std::vector<std::string> lines = {
        fmt::format("encoding: {}", name_of(layout.encoding)),
        fmt::format("separator: {}", name_of_separator(layout.separator)),
        fmt::format("heading: line {}{}", layout.heading_line,
                    layout.lines_before.empty()
                        ? ""
                        : fmt::format(", {} above it kept out",
                                      counted(layout.lines_before.size(), "line", "lines"))),
        decimal_line(layout.marks), order_line(layout.marks)};
    for (const auto& column : plan.columns.all)
        lines.push_back(column_line(column));
    return lines;
}

std::string doubt_line(const Doubt& doubt) {
    std::string line = fmt::format("line {}", doubt.line);
    if (!doubt.column.empty()) line += fmt::format(", column \"{}\"", on_one_line(doubt.column));
    if (!doubt.text.empty() || !doubt.column.empty())
        line += fmt::format(", \"{}\"", on_one_line(doubt.text));
    return doubt.expected.empty() ? line : line + ": expected " + on_one_line(doubt.expected);
}

std::vector<std::string> doubt_lines(const ImportPlan& plan) {
    std::vector<std::string> lines;
    for (const auto& doubt : plan.doubts())
        lines.push_back(doubt_line(doubt));
    return lines;
}

std::vector<std::string> duplicate_lines(const ImportPlan& plan) {
    std::vector<std::string> lines;
    for (const auto& [line, known] : plan.duplicates)
        lines.push_back(fmt::format("line {}: {}", line, known_words(known)));
    return lines;
}

std::vector<std::string> kept_out_lines(const ImportPlan& plan) {
    std::vector<std::string> lines;
    for (const auto& row : plan.kept_out)
        lines.push_back(fmt::format("line {}: {} ({})", row.line, row.reason, doubt_line(row.doubt)));
    return lines;
}

std::vector<std::string> question_lines(const ImportPlan& plan) {
    std::vector<std::string> lines;
    for (const auto& question : plan.questions)
        lines.push_back(fmt::format("{} Answer with, for example: {}", on_one_line(question.sentence),
                                    on_one_line(question.option)));
    return lines;
}

std::vector<std::string> entry_lines(const ImportPlan& plan) {
    std::vector<std::string> lines;
    for (const auto& planned : plan.entries)
        lines.push_back(fmt::format("line {}: {}: {}", planned.line, planned.bike_name,
                                    on_one_line(entry_text(planned.entry))));
    return lines;
}

std::string count_line(const ImportPlan& plan) {
    return fmt::format("{}: {} to add, {}, {}, {} kept out.", counted(plan.rows, "row", "rows"),
                       counted(plan.entries.size(), "entry", "entries"),
                       counted(plan.doubts().size(), "doubt", "doubts"),
                       counted(plan.duplicates.size(), "duplicate", "duplicates"),
                       counted(plan.kept_out.size(), "row", "rows"));
}

} // namespace sumpbook::import
