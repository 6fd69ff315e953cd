// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/import_report.h"

#include "model/import/plan_text.h"

namespace sumpbook::cli {
namespace {

using Lines = std::vector<std::string>;

document::Array array_of(const Lines& lines) {
    document::Array array;
    for (const auto& line : lines)
        array.emplace_back(line);
    return array;
}

document::Array doubts_json(const import::ImportPlan& plan) {
    document::Array doubts;
    for (const auto& doubt : plan.doubts()) {
        document::Object item;
        item.add("line", doubt.line)
            .add("column", doubt.column)
            .add("text", doubt.text)
            .add("expected", doubt.expected);
        doubts.emplace_back(std::move(item));
    }
    return doubts;
}

void add_lines(document::Document& text, const std::string& heading, const Lines& lines,
               document::Severity severity) {
    if (lines.empty()) return;
    text.heading(heading);
    document::Table table{{{"", {}}}, {}};
    for (const auto& line : lines)
        table.rows.push_back({document::Cell{line, severity}});
    text.table(std::move(table));
}

/// Rows kept out leave no trace in the garage: how to get them in.
std::string put_right_words(const std::vector<import::KeptOutRow>& rows) {
    constexpr std::size_t named = 10;
    std::string lines;
    for (std::size_t i = 0; i < rows.size() && i < named; ++i)
        lines += (i == 0 ? "" : ", ") + std::to_string(rows[i].line);
    if (rows.size() > named) lines += " and the others above";
    return std::string("Put ") + (rows.size() == 1 ? "line " : "lines ") + lines +
           " right in the file and import it again: what is there already stays out.";
}

} // namespace

document::Value import_json(const import::ImportPlan& plan, bool in_full) {
    document::Object object = document::result();
    object.add("file", plan.file).add("kind", import::name_of(plan.kind)).add("rows", plan.rows);
    object.add("layout", array_of(import::layout_lines(plan)));
    object.add("questions", array_of(import::question_lines(plan)));
    object.add("notices", array_of(plan.notices)).add("entries", plan.entries.size());
    if (in_full) object.add("would_add", array_of(import::entry_lines(plan)));
    object.add("doubts", doubts_json(plan));
    document::Array duplicates;
    for (const auto& row : plan.duplicates)
        duplicates.emplace_back(row.line);
    object.add("duplicate_lines", std::move(duplicates));
    object.add("kept_out", array_of(import::kept_out_lines(plan)));
    return object;
}

document::Document import_text(const import::ImportPlan& plan, bool in_full) {
    document::Document text;
    text.heading(plan.file, 1);
    add_lines(text, "How the file was read", import::layout_lines(plan), document::Severity::none);
    add_lines(text, "Please say", import::question_lines(plan), document::Severity::danger);
    for (const auto& notice : plan.notices)
        text.sentence(notice);
    if (in_full) add_lines(text, "Would be added", import::entry_lines(plan), document::Severity::none);
    add_lines(text, "Doubts, kept beside their entries", import::doubt_lines(plan),
              document::Severity::caution);
    add_lines(text, "There already, kept out", import::duplicate_lines(plan), document::Severity::none);
    add_lines(text, "Rows kept out", import::kept_out_lines(plan), document::Severity::caution);
    if (!plan.kept_out.empty()) text.sentence(put_right_words(plan.kept_out));
    text.sentence(import::count_line(plan));
    return text;
}

} // namespace sumpbook::cli
