// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/add_command_write.h"
#include "app/cli/commands.h"
#include "app/cli/entry_fields.h"
#include "app/cli/left_out.h"
#include "app/cli/log_attachment.h"
#include "app/cli/log_command_entry.h"
#include "app/cli/log_conflicts.h"
#include "app/cli/log_erase.h"
#include "app/cli/log_settle.h"
#include "app/cli/log_undo.h"
#include "app/cli/suggestions.h"
#include "reports/compose/entry_words.h"
#include "reports/compose/erased.h"
#include "reports/compose/log.h"

#include <algorithm>
#include <map>
#include <memory>

namespace sumpbook::cli {
namespace {

constexpr int most_entries = 1'000'000;

struct TypedSelection {
    std::string kind;
    std::string from;
    std::string until;
    std::string text;
    std::string last;
    bool only_doubts = false;
};

Result<std::optional<Date>> day_or_nothing(const std::string& option, const std::string& text,
                                           const TypedAs& as) {
    if (text.empty()) return std::optional<Date>{};
    const auto day = typed_date(option, text, as, true);
    if (!day) return pass_on(day.error());
    return std::optional<Date>{*day};
}

std::string list_of_kinds() {
    std::string list;
    for (const auto slug : entry_kind_slugs())
        list += (list.empty() ? "" : ", ") + std::string(slug);
    return list;
}

Result<compose::LogSelection> selection_of(const TypedSelection& typed, const TypedAs& as) {
    compose::LogSelection selection;
    if (!typed.kind.empty() && !body_of_kind(typed.kind)) {
        const auto& slugs = entry_kind_slugs();
        return fail(ProblemKind::wrong_usage, "There is no kind of entry \"" + typed.kind + "\"." +
                                                  did_you_mean(typed.kind, {slugs.begin(), slugs.end()}) +
                                                  " The kinds are: " + list_of_kinds() + ".");
    }
    selection.kind = typed.kind;
    const auto from = day_or_nothing("--from", typed.from, as);
    if (!from) return pass_on(from.error());
    const auto until = day_or_nothing("--until", typed.until, as);
    if (!until) return pass_on(until.error());
    selection.from = *from;
    selection.until = *until;
    selection.text = typed.text;
    selection.only_doubts = typed.only_doubts;
    if (typed.last.empty()) return selection;
    const auto last = typed_whole_number("--last", typed.last, 1, most_entries);
    if (!last) return pass_on(last.error());
    selection.last = static_cast<std::size_t>(*last);
    return selection;
}

void add_list(CommandLine& line, CLI::App& command) {
    auto typed = std::make_shared<TypedSelection>();
    command.add_option("--kind", typed->kind, "Only entries of this kind: " + list_of_kinds())
        ->type_name("KIND");
    command.add_option("--from", typed->from, "From this day on")->type_name("DATE");
    command.add_option("--until", typed->until, "Up to this day")->type_name("DATE");
    command.add_option("--text", typed->text, "Only entries that say this somewhere")->type_name("TEXT");
    command.add_option("--last", typed->last, "Only the newest so many")->type_name("N");
    command.add_flag("--doubts", typed->only_doubts, "Only entries with something in doubt");
    line.on_run(command, [typed](Session& session) -> Result<ExitStatus> {
        const auto selection = selection_of(*typed, marks_of(session));
        if (!selection) return pass_on(selection.error());
        const auto bikes = session.bikes();
        if (!bikes) return pass_on(bikes.error());
        const auto entries = compose::select(*bikes, *selection);
        const auto erased = erased_here(session);
        if (!erased) return pass_on(erased.error());
        const auto gone = compose::erased_of(*bikes, *erased);
        auto text = compose::log_text(entries);
        if (!gone.empty() && !session.options().plain) text.sentence(compose::erased_sentence(gone));
        session.show(compose::log_json(entries).add("erased", compose::erased_json(gone)), text);
        return ExitStatus::done;
    });
}

void add_show(CommandLine& line, CLI::App& group) {
    auto& command = line.command(group, "show", "All fields of an entry, its doubts and its earlier versions",
                                 {"sumpbook -g my.sumpbook log show k7-142"});
    auto id = std::make_shared<std::string>();
    command.add_option("entry", *id, "The entry, by the id of any of its versions")->required();
    line.on_run(command, [id](Session& session) -> Result<ExitStatus> {
        const auto open = session.open();
        if (!open) return pass_on(open.error());
        const auto versions = compose::entry_versions((*open)->records, *id);
        const auto found = entry_by_id(session, *id);
        if (found) {
            const auto files = compose::kept_files(found->entry->value, (*open)->attachments);
            auto text = compose::entry_page_text(*found->bike, *found->entry, versions, files);
            const auto& records = (*open)->records;
            const auto record = std::ranges::find(records, found->entry->name, &NamedRecord::name);
            if (const auto erased = store::recorded_again_on(*record, records))
                text.sentence(compose::recorded_again_sentence(*erased));
            const auto parts = left_out_of(session);
            if (!parts) return pass_on(parts.error());
            const auto left_out = left_out_words(*parts);
            if (!left_out.empty()) text.sentence(left_out);
            session.show(compose::entry_page_json(*found->bike, *found->entry, versions, files), text);
            if (!left_out.empty() && sentences_are_not_seen(session)) session.remark(left_out);
            return ExitStatus::done;
        }
        if (versions.empty()) return show_erased(session, *id, found.error());
        const std::string bike = bike_of_record((*open)->garage, (*open)->records, *id);
        session.show(compose::withdrawn_page_json(bike, versions),
                     compose::withdrawn_page_text(bike, versions));
        return ExitStatus::done;
    });
}

struct TypedCorrection {
    std::string id;
    TypedEntry fields;
    std::vector<std::string> clear;
    bool settle_doubts = false;
    bool keep = false;
};

Result<ExitStatus> correct(Session& session, TypedCorrection typed) {
    const auto found = entry_by_id(session, typed.id);
    if (!found) return pass_on(found.error());
    typed.fields = with_own_word_for_paid(std::move(typed.fields), kind_slug(found->entry->value.body));
    const auto open = session.open();
    if (!open) return pass_on(open.error());
    if (typed.fields.empty() && typed.clear.empty() && !typed.settle_doubts)
        return fail(ProblemKind::wrong_usage,
                    "What is to be corrected? Give the fields that change, such as --odometer 12354.");
    const auto as = entry_typed_as((*open)->garage, *found->bike, marks_of(session));
    Entry entry = found->entry->value;
    if (auto cleared = clear_entry_fields(entry, typed.clear); !cleared) return pass_on(cleared.error());
    if (auto set = set_entry_fields(entry, typed.fields, as); !set) return pass_on(set.error());
    // An imported entry may lack something from the start: that alone keeps nobody from correcting the rest.
    if (auto complete = check_complete(entry); !complete && check_complete(found->entry->value))
        return pass_on(complete.error());
    settle(entry, typed.fields, typed.clear, typed.settle_doubts);
    const auto objections =
        objections_to(entry, typed.fields, *found->bike, found->entry->id, session.today());
    if (auto kept = keep_or_refuse(session, entry, objections, typed.keep); !kept)
        return pass_on(kept.error());
    if (entry == found->entry->value && !found->entry->in_conflict())
        return refuse("That is what " + found->entry->id + " says already. Nothing was written.");
    const std::string settled =
        found->entry->in_conflict() ? " and settled what was changed in two places" : "";
    return write_entry(session, *found->bike, entry, sorted_heads(*found->entry),
                       "Corrected " + found->entry->id + settled + ", now");
}

/// The options of all kinds stand by the kind they are of, in the help.
void group_by_kind(CLI::App& command) {
    std::map<std::string, std::vector<std::string>> kinds_of;
    for (const auto kind : entry_kind_slugs()) {
        for (const auto& field : entry_fields(kind))
            kinds_of[field.option].emplace_back(kind);
    }
    for (const auto& [option, kinds] : kinds_of) {
        const bool of_all = kinds.size() == entry_kind_slugs().size();
        const std::string several = of_all ? "For every entry" : "For several kinds of entries";
        command.get_option(option)->group(kinds.size() == 1 ? "For " + kinds.front() : several);
    }
}

void add_correct(CommandLine& line, CLI::App& group) {
    auto& command =
        line.command(group, "correct", "Put right what an entry says; the earlier version is kept beside it",
                     {"sumpbook -g my.sumpbook log correct k7-142 --odometer 12354",
                      "sumpbook -g my.sumpbook log correct k7-142 --clear place --settle-doubts"});
    auto typed = std::make_shared<TypedCorrection>();
    command.add_option("entry", typed->id, "The entry, by its id")->required();
    command.preparse_callback([&command, typed](std::size_t) { // made only where they are meant
        for (const auto kind : entry_kind_slugs())
            add_entry_options(command, entry_fields(kind), typed->fields);
        group_by_kind(command);
        command.add_option("--clear", typed->clear, "Make this field empty; repeat for each")
            ->type_name("FIELD")
            ->allow_extra_args(false);
        command.add_flag("--settle-doubts", typed->settle_doubts,
                         "Nothing about the entry is in doubt any more");
        command.add_flag("--keep", typed->keep, "Record it as typed, doubts and all");
    });
    line.on_run(command, [typed](Session& session) { return correct(session, *typed); });
}

void add_withdraw(CommandLine& line, CLI::App& group) {
    auto& command = line.command(group, "withdraw", "Take an entry back; it counts no more, and is kept",
                                 {"sumpbook -g my.sumpbook log withdraw k7-142 --reason \"typed twice\""});
    struct Typed {
        std::string id;
        std::string reason;
    };
    auto typed = std::make_shared<Typed>();
    command.add_option("entry", typed->id, "The entry, by its id")->required();
    command.add_option("--reason", typed->reason, "Why (private)")->type_name("TEXT");
    line.on_run(command, [typed](Session& session) -> Result<ExitStatus> {
        const auto found = entry_by_id(session, typed->id);
        if (!found) return pass_on(found.error());
        const std::string said = found->entry->id + ": " + compose::entry_sentence(found->entry->value);
        Withdrawal withdrawal;
        if (!typed->reason.empty()) withdrawal.reason = typed->reason;
        std::vector<Change> changes;
        changes.push_back({found->bike->id, withdrawal, sorted_heads(*found->entry)});
        const auto ids = session.write(std::move(changes));
        if (!ids) return pass_on(ids.error());
        document::Object json = document::result();
        json.add("id", ids->front()).add("withdrawn", typed->id);
        show_written(session, json, ids->front(), "Withdrew " + said + ". It is kept, and counts no more.");
        return ExitStatus::done;
    });
}

} // namespace

void add_log_command(CommandLine& line) {
    auto& group = line.command(
        "log", "List and search entries; show, correct, withdraw, undo, conflicts, settle, erase",
        {"sumpbook -g my.sumpbook log", "sumpbook -g my.sumpbook -b \"Old twin\" log --kind fuel --last 5",
         "sumpbook -g my.sumpbook log --text \"clutch cable\""});
    group.require_subcommand(0, 1);
    add_list(line, group);
    add_show(line, group);
    add_correct(line, group);
    add_withdraw(line, group);
    add_log_undo(line, group);
    add_log_attachment(line, group);
    add_log_conflicts(line, group);
    add_log_settle(line, group);
    add_log_erase(line, group);
}

} // namespace sumpbook::cli
