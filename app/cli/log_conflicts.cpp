// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/log_conflicts.h"

namespace sumpbook::cli {

Result<std::vector<compose::OpenConflict>> conflicts_here(Session& session) {
    const auto bikes = session.bikes();
    if (!bikes) return pass_on(bikes.error());
    const auto open = session.open();
    if (!open) return pass_on(open.error());
    return compose::open_conflicts(*bikes, session.options().bike.empty(), (*open)->records);
}

Result<void> remark_conflicts(Session& session) {
    const auto conflicts = conflicts_here(session);
    if (!conflicts) return pass_on(conflicts.error());
    const auto remark = compose::conflicts_remark(*conflicts);
    if (!remark.empty()) session.remark(remark);
    return {};
}

void add_log_conflicts(CommandLine& line, CLI::App& group) {
    auto& command =
        line.command(group, "conflicts", "Everything that was changed in two places and is not settled",
                     {"sumpbook -g my.sumpbook log conflicts",
                      "sumpbook -g my.sumpbook -b \"Old twin\" log conflicts --json"});
    line.on_run(command, [](Session& session) -> Result<ExitStatus> {
        const auto conflicts = conflicts_here(session);
        if (!conflicts) return pass_on(conflicts.error());
        session.show(compose::conflicts_json(*conflicts), compose::conflicts_text(*conflicts));
        return ExitStatus::done;
    });
}

} // namespace sumpbook::cli
