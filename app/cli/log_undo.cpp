// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/log_undo.h"

#include "app/cli/add_command_write.h"
#include "app/cli/log_command_entry.h"
#include "app/cli/session.h"
#include "model/garage/versions.h"
#include "reports/compose/record_facts.h"

#include <algorithm>
#include <memory>

namespace sumpbook::cli {
namespace {

bool is_of_entry(const NamedRecord& named) {
    const auto& content = named.record.content;
    return std::holds_alternative<Entry>(content) || std::holds_alternative<Withdrawal>(content);
}

/// All versions of the entry; refused where no entry has the id.
Result<VersionGroup> versions_of(Session& session, const std::vector<NamedRecord>& records, const std::string& id) {
    for (auto& group : version_groups(records)) {
        const auto is_meant = [&](std::size_t place) {
            return records[place].id == id && is_of_entry(records[place]);
        };
        if (std::ranges::any_of(group, is_meant)) return std::move(group);
    }
    return pass_on(entry_by_id(session, id).error());
}

/// What the last change replaced: of the versions that it names, the one recorded last.
Result<const NamedRecord*> before(const NamedRecord& last, const VersionGroup& group,
                                  const std::vector<NamedRecord>& records) {
    const NamedRecord* found = nullptr;
    for (const auto place : group) {
        const auto& one = records[place];
        if (std::ranges::find(last.record.replaces, one.name) != last.record.replaces.end() && is_of_entry(one))
            found = &one;
    }
    if (found != nullptr) return found;
    if (last.record.replaces.empty())
        return refuse(last.id + " was never changed, so there is nothing to take back. To take the entry itself "
                                "back: sumpbook log withdraw " + last.id);
    return refuse("What stood before " + last.id + " is not in this file: it was erased or left out.");
}

std::string words_of(const NamedRecord& named) {
    const auto* gone = std::get_if<Withdrawal>(&named.record.content);
    if (gone == nullptr) return compose::record_title(named.record.content);
    return "withdrawn" + (gone->reason ? ": " + *gone->reason : std::string());
}

Result<ExitStatus> undo(Session& session, const std::string& id) {
    const auto open = session.open();
    if (!open) return pass_on(open.error());
    const auto& records = (*open)->records;
    const auto group = versions_of(session, records, id);
    if (!group) return pass_on(group.error());
    const auto heads = current_version(*group, records).heads;
    if (heads.size() != 1) {
        return refuse(id + " was changed in two places: say which version stands. See: sumpbook log settle " + id);
    }
    const auto& last = records[heads.front()];
    const auto earlier = before(last, *group, records);
    if (!earlier) return pass_on(earlier.error());
    const auto said = words_of(**earlier);
    document::Object json = document::result();
    json.add("undone", last.id).add("says_again", (*earlier)->id);
    const std::string undone = "Undone " + last.id + ": what " + (*earlier)->id + " said stands again";
    const auto ids = session.write({{last.subject, (*earlier)->record.content, {last.name}}});
    if (!ids) return pass_on(ids.error());
    json.add("id", ids->front());
    show_written(session, json, ids->front(), undone + ", now " + ids->front() + " (" + said + ").");
    return ExitStatus::done;
}

} // namespace

void add_log_undo(CommandLine& line, CLI::App& group) {
    auto& command = line.command(
        group, "undo", "Take back the last change of an entry, a correction or its withdrawal; nothing is lost",
        {"sumpbook -g my.sumpbook log undo k7-142"});
    auto id = std::make_shared<std::string>();
    command.add_option("entry", *id, "The entry, by the id of any of its versions")->required();
    line.on_run(command, [id](Session& session) { return undo(session, *id); });
}

} // namespace sumpbook::cli
