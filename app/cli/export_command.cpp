// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/commands.h"
#include "app/cli/output_file.h"
#include "app/cli/session.h"
#include "reports/compose/export_tables.h"
#include "reports/compose/log.h"
#include "reports/compose/log_selection.h"
#include "reports/write/csv.h"
#include "reports/write/json.h"

#include <memory>

namespace sumpbook::cli {
namespace {

struct Typed {
    std::string what;
    std::string to;
    bool guard_formulas = false;
};

Result<ExitStatus> run(Session& session, const Typed& typed) {
    const auto bikes = session.bikes();
    if (!bikes) return pass_on(bikes.error());
    if (typed.what == "json")
        return put_out(session, write::json(compose::log_json(compose::select(*bikes, {}))), typed.to);
    const auto kind = compose::export_kind(typed.what);
    if (!kind)
        return fail(ProblemKind::wrong_usage, "Export what? json, fuel, work, costs, readings or samples.");
    return put_out(session, write::csv(compose::export_table(*bikes, *kind, typed.guard_formulas)), typed.to);
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
