// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/commands.h"
#include "app/cli/log_conflicts.h"
#include "app/cli/session.h"
#include "model/upkeep/due.h"
#include "reports/compose/due.h"

#include <memory>

namespace sumpbook::cli {

void add_due_command(CommandLine& line) {
    auto& command =
        line.command("due", "What falls due on every bike, worst first",
                     {"sumpbook -g my.sumpbook due", "sumpbook -g my.sumpbook -b \"Old twin\" due --why",
                      "sumpbook -g my.sumpbook due --exit-code --json"});
    struct Typed {
        bool why = false;
        bool exit_code = false;
    };
    auto typed = std::make_shared<Typed>();
    command.add_flag("--why", typed->why,
                     "Each item by itself: why then and not at another time, its limits, history and source");
    command.add_flag("--exit-code", typed->exit_code, "End with 1 where something is due or overdue");
    line.on_run(command, [typed](Session& session) -> Result<ExitStatus> {
        const auto bikes = session.bikes();
        if (!bikes) return pass_on(bikes.error());
        const bool full = typed->why || session.options().json;
        const auto items =
            upkeep::due_items(*bikes, session.today(), {.later_times = full, .reasons = typed->why});
        session.show(compose::due_json(items),
                     typed->why && !items.empty()
                         ? compose::due_why_text(items)
                         : compose::due_text(items, compose::sold_sentences(*bikes, session.today())));
        if (auto said = remark_conflicts(session); !said) return pass_on(said.error());
        return typed->exit_code && upkeep::needs_attention(items) ? ExitStatus::findings : ExitStatus::done;
    });
}

} // namespace sumpbook::cli
