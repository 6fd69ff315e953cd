// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/log_settle.h"

#include "app/cli/add_command_write.h"
#include "app/cli/log_conflicts.h"
#include "app/cli/suggestions.h"

#include <algorithm>
#include <memory>

namespace sumpbook::cli {
namespace {

struct Typed {
    std::vector<std::string> ids;
    std::string keep;
};

/// "used" stands for the version that is used until a conflict is settled.
constexpr const char* used_word = "used";

bool has(const std::vector<std::string>& list, const std::string& text) {
    return std::ranges::find(list, text) != list.end();
}

Problem no_conflict(const OpenGarage& open, const std::vector<compose::OpenConflict>& conflicts,
                    const std::string& id) {
    const Place place{.file = {}, .line = {}, .column = {}, .text = id};
    const bool known = std::ranges::find(open.records, id, &NamedRecord::id) != open.records.end();
    if (known) {
        return {ProblemKind::refused,
                id + " was not changed in two places: there is nothing to settle. See: sumpbook log conflicts",
                place};
    }
    std::vector<std::string> ids;
    for (const auto& conflict : conflicts)
        ids.insert(ids.end(), conflict.version_ids.begin(), conflict.version_ids.end());
    return {ProblemKind::refused,
            "Nothing has the id \"" + id + "\"." + did_you_mean(id, ids) + " See: sumpbook log conflicts", place};
}

/// The named conflicts, each once; all of them where none is named.
Result<std::vector<compose::OpenConflict>> meant(Session& session, const Typed& typed) {
    const auto all = conflicts_here(session);
    if (!all) return pass_on(all.error());
    if (typed.ids.empty()) return *all;
    const auto open = session.open();
    if (!open) return pass_on(open.error());
    std::vector<compose::OpenConflict> chosen;
    std::vector<std::string> done;
    for (const auto& id : typed.ids) {
        const auto found = std::ranges::find_if(
            *all, [&](const compose::OpenConflict& conflict) { return has(conflict.version_ids, id); });
        if (found == all->end()) return pass_on(no_conflict(**open, *all, id));
        if (has(done, found->used().record->id)) continue;
        done.push_back(found->used().record->id);
        chosen.push_back(*found);
    }
    return chosen;
}

Result<const compose::ConflictSide*> kept_side(const compose::OpenConflict& conflict, const std::string& keep) {
    if (keep == used_word || (keep.empty() && conflict.says_the_same())) return &conflict.used();
    std::string sides;
    for (const auto& side : conflict.sides) {
        if (side.record->id == keep) return &side;
        sides += (sides.empty() ? "" : " or ") + side.record->id;
    }
    return refuse("\"" + keep + "\" is none of the versions that stand against each other. Keep " + sides + ".",
                  {.file = {}, .line = {}, .column = "--keep", .text = keep});
}

/// What is done with one conflict, ready to be written and in words.
struct Settling {
    Change change;
    std::string about;
    std::string kept;
    std::string kept_words;
    struct GivenUp {
        std::string id;
        std::string words;
    };
    std::vector<GivenUp> given_up;
};

std::string words_of(const compose::ConflictSide& side) {
    return compose::version_title(side.record->record.content);
}

/// "Volume 14.3 L instead of 14.5 L, Note - instead of ...".
std::string differences(const compose::ConflictSide& kept, const compose::ConflictSide& other) {
    std::string text;
    for (const auto& field :
         compose::differing_fields({&kept.record->record.content, &other.record->record.content})) {
        text += (text.empty() ? "" : ", ") + field.label + " " + field.texts.at(1) + " instead of " +
                field.texts.at(0);
    }
    return text.empty() ? "the same" : text;
}

Settling settling_of(const compose::OpenConflict& conflict, const compose::ConflictSide& kept) {
    Settling settling{{kept.record->subject, kept.record->record.content, {}},
                      compose::conflict_title(conflict),
                      kept.record->id,
                      words_of(kept),
                      {}};
    for (const auto& side : conflict.sides) {
        settling.change.replaces.push_back(side.record->name);
        if (side.record == kept.record) continue;
        const bool withdrawal = std::holds_alternative<Withdrawal>(kept.record->record.content);
        settling.given_up.push_back({side.record->id, withdrawal ? words_of(side) : differences(kept, side)});
    }
    return settling;
}

std::string listed(const std::vector<Settling::GivenUp>& given_up) {
    std::string all;
    for (const auto& one : given_up)
        all += (all.empty() ? "" : ", ") + one.id;
    return all;
}

Result<void> ask(Session& session, const std::vector<Settling>& all) {
    if (session.options().yes) return {};
    for (const auto& one : all) {
        session.remark("Kept, " + one.kept + ": " + one.kept_words + ".");
        for (const auto& other : one.given_up)
            session.remark("Given up, " + other.id + ": " + other.words + ".");
    }
    const std::string question = all.size() == 1 ? "Keep " + all.front().kept + " and give up " +
                                                       listed(all.front().given_up) + "?"
                                                 : "Settle these " + std::to_string(all.size()) + " conflicts so?";
    return session.confirm(question);
}

Result<ExitStatus> write(Session& session, const std::vector<Settling>& all) {
    std::vector<Change> changes;
    for (const auto& one : all)
        changes.push_back(one.change);
    const auto ids = session.write(std::move(changes));
    if (!ids) return pass_on(ids.error());
    document::Array items;
    document::Document text;
    for (std::size_t i = 0; i < all.size(); ++i) {
        const auto& one = all[i];
        const std::string id = ids->at(i);
        document::Array given_up;
        for (const auto& other : one.given_up)
            given_up.emplace_back(other.id);
        document::Object item;
        item.add("id", id).add("kept", one.kept).add("given_up", std::move(given_up));
        items.emplace_back(std::move(item));
        const std::string sentence = "Settled: " + one.kept + " is kept, now " + id + " (" + one.kept_words +
                                     "). Given up, and kept as an earlier version: " + listed(one.given_up) +
                                     ".";
        if (session.options().plain)
            text.facts({{{id, sentence}}});
        else
            text.sentence(sentence);
    }
    session.show(document::list_of(std::move(items)), text);
    return ExitStatus::done;
}

Result<ExitStatus> settle_conflicts(Session& session, const Typed& typed) {
    const auto conflicts = meant(session, typed);
    if (!conflicts) return pass_on(conflicts.error());
    if (typed.ids.size() > 1 && !typed.keep.empty() && typed.keep != used_word && conflicts->size() > 1) {
        return fail(ProblemKind::wrong_usage,
                    "One version can be kept of one conflict. Settle them one by one, or say --keep used.");
    }
    const bool chosen = !typed.ids.empty() &&
                        (!typed.keep.empty() ||
                         std::ranges::all_of(*conflicts, &compose::OpenConflict::says_the_same));
    if (!chosen) {
        session.show(compose::conflicts_json(*conflicts), compose::conflicts_text(*conflicts));
        return ExitStatus::done;
    }
    std::vector<Settling> all;
    for (const auto& conflict : *conflicts) {
        const auto kept = kept_side(conflict, typed.keep);
        if (!kept) return pass_on(kept.error());
        all.push_back(settling_of(conflict, **kept));
    }
    if (auto yes = ask(session, all); !yes) return pass_on(yes.error());
    return write(session, all);
}

} // namespace

void add_log_settle(CommandLine& line, CLI::App& group) {
    auto& command = line.command(
        group, "settle", "Say which of several versions stands, where something was changed in two places",
        {"sumpbook -g my.sumpbook log settle k7-142", "sumpbook -g my.sumpbook log settle k7-142 --keep p2-3",
         "sumpbook -g my.sumpbook log settle k7-142 k7-150 --keep used --yes"});
    auto typed = std::make_shared<Typed>();
    command.add_option("entry", typed->ids, "What is to be settled, by the id of any of its versions");
    command.add_option("--keep", typed->keep,
                       "The version that stands, or \"used\" for the one that is used until then")
        ->type_name("VERSION")
        ->allow_extra_args(false);
    line.on_run(command, [typed](Session& session) { return settle_conflicts(session, *typed); });
}

} // namespace sumpbook::cli
