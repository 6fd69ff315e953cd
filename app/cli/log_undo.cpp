// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/log_undo.h"

#include "app/cli/add_command_write.h"
#include "app/cli/log_command_entry.h"
#include "app/cli/session.h"
#include "reports/compose/log_versions.h"
#include "reports/compose/record_facts.h"

#include <algorithm>
#include <memory>

namespace sumpbook::cli {
namespace {

/// What the last change replaced: of the versions that it names and that are here, the one recorded last.
Result<std::string> before(const compose::EntryVersion& last, const std::vector<compose::EntryVersion>& all) {
    std::string found;
    for (const auto& version : all) {
        if (std::ranges::find(last.replaces, version.id) != last.replaces.end()) found = version.id;
    }
    if (!found.empty()) return found;
    if (last.replaces.empty()) {
        return refuse(last.id +
                      " was never changed, so there is nothing to take back. To take the entry itself "
                      "back: sumpbook log withdraw " +
                      last.id);
    }
    return refuse("What stood before " + last.id + " is not in this file: it was erased or left out.");
}

Result<ExitStatus> undo(Session& session, const std::string& id) {
    const auto open = session.open();
    if (!open) return pass_on(open.error());
    const auto& records = (*open)->records;
    const auto versions = compose::entry_versions(records, id);
    if (versions.empty()) return pass_on(entry_by_id(session, id).error());
    if (std::ranges::count_if(versions, &compose::EntryVersion::current) != 1)
        return refuse(id + " was changed in two places: say which version stands. See: sumpbook log settle " +
                      id);
    const auto& last = *std::ranges::find_if(versions, &compose::EntryVersion::current);
    const auto earlier = before(last, versions);
    if (!earlier) return pass_on(earlier.error());
    const auto& undone = *std::ranges::find(records, last.id, &NamedRecord::id);
    const auto& again = *std::ranges::find(records, *earlier, &NamedRecord::id);
    const auto ids = session.write({{undone.subject, again.record.content, {undone.name}}});
    if (!ids) return pass_on(ids.error());
    document::Object json = document::result();
    json.add("undone", last.id).add("says_again", *earlier).add("id", ids->front());
    show_written(session, json, ids->front(),
                 "Undone " + last.id + ": what " + *earlier + " said stands again, now " + ids->front() +
                     " (" + compose::version_title(again.record.content) + ").");
    return ExitStatus::done;
}

} // namespace

void add_log_undo(CommandLine& line, CLI::App& group) {
    auto& command =
        line.command(group, "undo",
                     "Take back the last change of an entry, a correction or its withdrawal; nothing is lost",
                     {"sumpbook -g my.sumpbook log undo k7-142"});
    auto id = std::make_shared<std::string>();
    command.add_option("entry", *id, "The entry, by the id of any of its versions")->required();
    line.on_run(command, [id](Session& session) { return undo(session, *id); });
}

} // namespace sumpbook::cli
