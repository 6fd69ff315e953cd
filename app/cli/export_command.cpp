// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/commands.h"
#include "app/cli/session.h"
#include "model/import/request.h"
#include "reports/compose/entry_cells.h"
#include "reports/compose/log.h"
#include "reports/compose/log_selection.h"
#include "reports/write/csv.h"
#include "reports/write/json.h"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <memory>

namespace sumpbook::cli {
namespace {

struct Typed {
    std::string what;
    std::string to;
    bool guard_formulas = false;
};

/// Whether entries of this kind go into the CSV file of that name.
bool belongs(const Entry& entry, import::ImportKind kind) {
    switch (kind) {
    case import::ImportKind::fuel:
        return std::holds_alternative<Fuel>(entry.body);
    case import::ImportKind::costs:
        return std::holds_alternative<Cost>(entry.body);
    case import::ImportKind::readings:
        return std::holds_alternative<Reading>(entry.body);
    case import::ImportKind::samples:
        return std::holds_alternative<Sample>(entry.body);
    case import::ImportKind::work:
        break;
    }
    return !std::holds_alternative<Fuel>(entry.body) && !std::holds_alternative<Cost>(entry.body) &&
           !std::holds_alternative<Reading>(entry.body) && !std::holds_alternative<Sample>(entry.body);
}

/// A spreadsheet takes text that starts so for a formula; an apostrophe in front keeps it text.
std::string guarded(const compose::EntryCell& cell, bool guard) {
    const bool formula = guard && cell.is_text && !cell.text.empty() &&
                         std::string_view("=+-@\t\r").find(cell.text[0]) != std::string_view::npos;
    return formula ? "'" + cell.text : cell.text;
}

std::string csv_of(const std::vector<const Bike*>& bikes, import::ImportKind kind, bool guard) {
    std::vector<std::string> headings{"bike"};
    std::vector<std::vector<std::pair<std::string, std::string>>> rows;
    for (const auto* bike : bikes) {
        for (const auto& logged : bike->log) {
            if (!belongs(logged.value, kind)) continue;
            std::vector<std::pair<std::string, std::string>> row{{"bike", bike->details.value.name}};
            if (kind == import::ImportKind::work) row.emplace_back("kind", kind_slug(logged.value.body));
            for (const auto& cell : compose::entry_cells(logged.value))
                row.emplace_back(cell.heading, guarded(cell, guard));
            for (const auto& [heading, text] : row) {
                if (std::ranges::find(headings, heading) == headings.end()) headings.push_back(heading);
            }
            rows.push_back(std::move(row));
        }
    }
    std::vector<std::vector<std::string>> table{headings};
    for (const auto& row : rows) {
        std::vector<std::string> cells(headings.size());
        for (const auto& [heading, text] : row) {
            cells[static_cast<std::size_t>(std::ranges::find(headings, heading) - headings.begin())] = text;
        }
        table.push_back(std::move(cells));
    }
    return write::csv(table);
}

Result<ExitStatus> put_out(Session& session, const std::string& text, const std::string& to) {
    if (to.empty() || to == "-") {
        session.print(text);
        return ExitStatus::done;
    }
    std::error_code unknown; // a path that cannot be looked at is refused when it is opened
    if (std::filesystem::equivalent(to, session.options().garage_file, unknown)) {
        return refuse("This is the garage file itself. Choose another name.", {.file = to});
    }
    if (std::filesystem::exists(to, unknown)) {
        if (const auto yes = session.confirm("Write over " + to + "?"); !yes) return pass_on(yes.error());
    }
    std::ofstream out(to, std::ios::binary | std::ios::trunc);
    out << text;
    out.close();
    if (!out) return fail(ProblemKind::io, "The file could not be written.", {.file = to});
    session.remark("Wrote " + to + ".");
    return ExitStatus::done;
}

Result<ExitStatus> run(Session& session, const Typed& typed) {
    const auto bikes = session.bikes();
    if (!bikes) return pass_on(bikes.error());
    if (typed.what == "json")
        return put_out(session, write::json(compose::log_json(compose::select(*bikes, {}))), typed.to);
    const auto kind = import::read_import_kind(typed.what);
    if (!kind)
        return fail(ProblemKind::wrong_usage, "Export what? json, fuel, work, costs, readings or samples.");
    return put_out(session, csv_of(*bikes, *kind, typed.guard_formulas), typed.to);
}

} // namespace

void add_export_command(CommandLine& line) {
    auto& command = line.command(
        "export", "Write entries out: CSV that import reads again, or JSON",
        {"sumpbook -g my.sumpbook export fuel --to fuel.csv", "sumpbook -g my.sumpbook export json"});
    auto typed = std::make_shared<Typed>();
    command.add_option("what", typed->what, "fuel, work, costs, readings, samples (CSV) or json")->required();
    command.add_option("--to", typed->to, "The file to write (otherwise standard output)");
    command.add_flag("--guard-formulas", typed->guard_formulas,
                     "Put an apostrophe before text that a spreadsheet would take for a formula");
    line.on_run(command, [typed](Session& session) { return run(session, *typed); });
}

} // namespace sumpbook::cli
