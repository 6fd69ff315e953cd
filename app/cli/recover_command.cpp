// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/commands.h"
#include "app/cli/new_file.h"
#include "app/cli/session.h"
#include "reports/compose/file_counts.h"
#include "reports/compose/recovery.h"

#include <memory>

namespace sumpbook::cli {
namespace {

struct Typed {
    std::string file;
    std::string to;
};

Result<ExitStatus> recover(Session& session, const Typed& typed) {
    const auto plan = store::plan_recovery(session.files(), session.random(), typed.file, {});
    if (!plan) return pass_on(plan.error());
    if (const auto free = refuse_where_taken(typed.to); !free) return pass_on(free.error());
    show_first(session, compose::recovery_plan_text(typed.file, *plan));
    const auto question = "Write " + typed.to + " with " + compose::count_of(plan->entries, "record") + "?";
    if (const auto yes = session.confirm(question); !yes) return pass_on(yes.error());
    const auto written = store::write_out(session.files(), plan->set, typed.to, plan->mode);
    if (!written) return pass_on(written.error());
    session.show(compose::recovered_json(typed.file, *plan, *written),
                 compose::recovered_text(typed.file, *plan, *written));
    return ExitStatus::done;
}

} // namespace

void add_recover_command(CommandLine& line) {
    auto& command = line.command("recover", "Save what verifies of a damaged garage file into a new one",
                                 {"sumpbook recover damaged.sumpbook --to saved.sumpbook"});
    auto typed = std::make_shared<Typed>();
    command.add_option("file", typed->file, "The damaged file; it is only read")->required();
    command.add_option("--to", typed->to, "The file to make")->type_name("FILE")->required();
    line.on_run(command, [typed](Session& session) { return recover(session, *typed); });
}

} // namespace sumpbook::cli
