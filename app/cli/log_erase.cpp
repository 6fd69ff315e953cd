// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/log_erase.h"

#include "app/cli/add_command_write.h"
#include "app/cli/log_command_entry.h"
#include "model/store/garage_file.h"
#include "reports/compose/erased.h"
#include "reports/compose/record_facts.h"

#include <algorithm>
#include <filesystem>
#include <memory>

namespace sumpbook::cli {
namespace {

struct Typed {
    std::string id;
    std::string reason;
};

std::string number_of(std::size_t count, const std::string& one, const std::string& several) {
    return std::to_string(count) + " " + (count == 1 ? one : several);
}

/// The file must be named itself: replacing it by way of a link would leave the old one where it is.
Result<void> not_a_link(const std::string& path) {
    std::error_code code;
    if (!std::filesystem::is_symlink(path, code)) return {};
    const auto target = std::filesystem::canonical(path, code);
    return refuse("This name is a link. Erase in the file itself: sumpbook -g \"" + target.string() +
                      "\" log erase ...",
                  {.file = path, .line = {}, .column = {}, .text = {}});
}

/// What else on this computer holds the old bytes, as far as it can be seen from the file's name.
void remark_other_holders(Session& session, const std::string& path) {
    std::error_code code;
    if (std::filesystem::hard_link_count(path, code) > 1 && !code)
        session.remark("The file has another name on this disk; under that name it keeps what is erased here.");
    const auto folder = std::filesystem::absolute(path, code).parent_path();
    const auto own = std::filesystem::path(path).filename().string();
    for (std::filesystem::directory_iterator entry(folder, code);
         !code && entry != std::filesystem::directory_iterator(); entry.increment(code)) {
        const auto name = entry->path().filename().string();
        if (name.starts_with(own + ".cut-"))
            session.remark(name + " beside it holds bytes of a save that was cut short; look at it, or remove it.");
        if (name.starts_with(own + ".new-"))
            session.remark(name + " beside it was left by a program that was stopped while it wrote the file anew, "
                                  "and can hold all that was in it; remove it if no other sumpbook is running.");
    }
}

/// The record that the id names: an entry of the log or a withdrawal of one.
Result<const NamedRecord*> record_named(Session& session, const std::string& id) {
    const auto open = session.open();
    if (!open) return pass_on(open.error());
    const auto& records = (*open)->records;
    const auto found = std::ranges::find(records, id, &NamedRecord::id);
    if (found != records.end()) return &*found;
    const auto erased = erased_here(session);
    if (!erased) return pass_on(erased.error());
    const auto gone = std::ranges::find(*erased, id, &store::ErasedRecord::id);
    if (gone != erased->end() && gone->for_itself)
        return refuse(id + " was erased already. See: sumpbook log show " + id);
    if (gone != erased->end() && gone->by != nullptr)
        return refuse(id + " was recorded again as " + gone->by->id + ". Erase that.");
    const auto entry = entry_by_id(session, id);
    return pass_on(entry ? Problem{ProblemKind::refused, "Nothing of " + id + " is held here.", {}}
                         : entry.error());
}

/// The version whose words name the entry best: the last that is no withdrawal.
std::string words_of(const store::Erasure& erasure, const std::vector<NamedRecord>& records) {
    std::string words;
    for (const auto i : erasure.versions) {
        if (std::holds_alternative<Entry>(records[i].record.content))
            words = compose::record_title(records[i].record.content);
    }
    return words;
}

Result<void> ask(Session& session, const std::string& id, const store::Erasure& erasure, const std::string& words) {
    if (session.options().yes) return {};
    session.remark("To be erased, " + id + ": " + words + ".");
    if (erasure.versions.size() > 1)
        session.remark("All its " + std::to_string(erasure.versions.size()) + " versions go with it.");
    if (!erasure.attachments.empty())
        session.remark(number_of(erasure.attachments.size(), "attached file goes", "attached files go") +
                       " with it.");
    if (erasure.copies() > 0) {
        session.remark(number_of(erasure.copies(), "record that was saved together with it is",
                                 "records that were saved together with it are") +
                       " recorded again under a new id; what they say and when they were recorded stays.");
    }
    session.remark("Backups, hand-overs and other copies of this file still hold it; erase it there too. A merge "
                   "with one of them keeps these versions erased in the result.");
    return session.confirm("Erase " + id + " for good?");
}

Result<ExitStatus> erase(Session& session, const Typed& typed) {
    if (typed.reason.empty()) return fail(ProblemKind::wrong_usage, "Give a reason: --reason TEXT.");
    const auto path = session.garage_path();
    if (!path) return pass_on(path.error());
    if (auto itself = not_a_link(*path); !itself) return pass_on(itself.error());
    const auto named = record_named(session, typed.id);
    if (!named) return pass_on(named.error());
    const auto open = session.open();
    if (!open) return pass_on(open.error());
    const auto erasure = store::plan_erasure((*open)->records, (*named)->name);
    if (!erasure) return pass_on(erasure.error());
    const auto words = words_of(*erasure, (*open)->records);
    if (auto yes = ask(session, typed.id, *erasure, words); !yes) return pass_on(yes.error());
    const auto file = session.file();
    if (!file) return pass_on(file.error());
    const auto told = (*file)->notices().size();
    const auto erased = (*file)->erase((*named)->name, typed.reason, session.recorded_time());
    for (auto i = told; i < (*file)->notices().size(); ++i)
        session.remark((*file)->notices()[i]);
    if (!erased) return pass_on(erased.error());
    document::Object json = document::result();
    json.add("id", erased->id).add("erased", typed.id).add("versions", erased->versions);
    json.add("recorded_again", erased->copies).add("attachments", erased->attachments);
    std::string sentence = "Erased " + typed.id + " (" +
                           number_of(erased->versions, "version", "versions");
    if (erased->attachments > 0)
        sentence += ", " + number_of(erased->attachments, "attached file", "attached files");
    sentence += "): its hash is kept, so fingerprints printed before still verify.";
    if (erased->copies > 0)
        sentence += " " + number_of(erased->copies, "record was", "records were") + " recorded again.";
    show_written(session, json, erased->id, sentence);
    remark_other_holders(session, *path);
    return ExitStatus::done;
}

} // namespace

Result<std::vector<store::ErasedRecord>> erased_here(Session& session) {
    const auto file = session.file();
    if (!file) return pass_on(file.error());
    const auto open = session.open();
    if (!open) return pass_on(open.error());
    return store::erased_records((*file)->index(), (*open)->records);
}

Result<ExitStatus> show_erased(Session& session, const std::string& id, const Problem& otherwise) {
    const auto erased = erased_here(session);
    if (!erased) return pass_on(erased.error());
    const auto found = std::ranges::find(*erased, id, &store::ErasedRecord::id);
    if (found == erased->end()) return pass_on(otherwise);
    session.show(compose::erased_page_json(*found), compose::erased_page_text(*found));
    return ExitStatus::done;
}

void add_log_erase(CommandLine& line, CLI::App& group) {
    auto& command = line.command(
        group, "erase", "Take what an entry says out of the file for good; only its hash is kept",
        {"sumpbook -g my.sumpbook log erase k7-142 --reason \"names a third person\"",
         "sumpbook -g my.sumpbook log erase k7-142 --reason \"private\" --yes"});
    auto typed = std::make_shared<Typed>();
    command.add_option("entry", typed->id, "The entry, by the id of any of its versions")->required();
    command.add_option("--reason", typed->reason, "Why (kept in the file, private)")
        ->type_name("TEXT")
        ->required();
    line.on_run(command, [typed](Session& session) { return erase(session, *typed); });
}

} // namespace sumpbook::cli
