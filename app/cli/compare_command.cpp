// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/add_command_write.h"
#include "app/cli/commands.h"
#include "app/cli/session.h"
#include "app/cli/suggestions.h"
#include "app/cli/typed.h"
#include "model/usage/as_of.h"
#include "reports/compose/compare.h"

#include <memory>
#include <sstream>

namespace sumpbook::cli {
namespace {

struct Typed {
    std::string at;
    std::string modification;
    bool why = false;
};

const std::string& what(const LogEntry& entry) { return std::get<Modification>(entry.value.body).what; }

/// "k7-12 of 13 Apr 2024 (front sprocket), k7-20 of ..."
std::string list_of(const std::vector<const LogEntry*>& modifications) {
    std::string text;
    for (const auto* entry : modifications) {
        text += (text.empty() ? "" : ", ") + entry->id + " of " + spelled_text(entry->value.date) + " (" +
                what(*entry) + ")";
    }
    return text;
}

/// What a modification may be called: its entry, and each longer word of it.
void add_names(std::vector<std::string>& known, const LogEntry& entry) {
    constexpr std::size_t shortest = 4;
    known.push_back(entry.id);
    std::istringstream words(what(entry));
    for (std::string word; words >> word;) {
        if (word.size() >= shortest) known.push_back(word);
    }
}

Result<const LogEntry*> modification_of(const Bike& bike, const std::string& typed) {
    const auto like = review::modifications_like(bike, typed);
    if (like.size() == 1) return like.front();
    const Place place{.file = {}, .line = {}, .column = "--modification", .text = typed};
    if (like.size() > 1)
        return refuse("More than one modification fits: " + list_of(like) + ". Name one by its entry.",
                      place);
    std::vector<std::string> known;
    const auto all = entries_of<Modification>(bike);
    for (const auto* entry : all)
        add_names(known, *entry);
    return refuse("No modification of " + bike.details.value.name + " fits." + did_you_mean(typed, known) +
                      (all.empty() ? " None is recorded." : " Recorded are: " + list_of(all) + "."),
                  place);
}

tl::unexpected<Problem> no_cut(const Bike& bike) {
    const auto all = entries_of<Modification>(bike);
    return fail(ProblemKind::wrong_usage,
                "Before and after what? Name a day with --at, or a modification with --modification." +
                    (all.empty() ? std::string() : " Recorded are: " + list_of(all) + "."));
}

Result<compose::CompareReport> cut_of(const Bike& bike, const Typed& typed, const TypedAs& as) {
    compose::CompareReport report;
    report.bike = bike.details.value.name;
    if (typed.at.empty() && typed.modification.empty()) return no_cut(bike);
    if (!typed.at.empty()) {
        const auto day = typed_date("--at", typed.at, as);
        if (!day) return pass_on(day.error());
        report.cut.at = *day;
        return report;
    }
    const auto entry = modification_of(bike, typed.modification);
    if (!entry) return pass_on(entry.error());
    report.cut = {(*entry)->value.date, (*entry)->id};
    report.modification = what(**entry);
    return report;
}

Result<ExitStatus> run(Session& session, const Typed& typed) {
    const auto open = session.open();
    if (!open) return pass_on(open.error());
    const auto whole_bike = session.one_bike();
    if (!whole_bike) return pass_on(whole_bike.error());
    const Bike bike = usage::as_of(**whole_bike, session.today());
    auto report = cut_of(bike, typed, marks_of(session));
    if (!report) return pass_on(report.error());
    report->series = review::before_and_after((*open)->garage, bike, report->cut);
    session.show(compose::compare_json(*report),
                 compose::compare_text(*report, settings_of((*open)->garage), typed.why));
    return ExitStatus::done;
}

} // namespace

void add_compare_command(CommandLine& line) {
    auto& command =
        line.command("compare", "Measures, fuel, oil and wear before and after a modification or a day",
                     {"sumpbook -g my.sumpbook compare --at 2024-05-01",
                      "sumpbook -g my.sumpbook -b \"Old twin\" compare --modification sprocket --why"});
    auto typed = std::make_shared<Typed>();
    auto* at = command.add_option("--at", typed->at, "The day: what is of it and later comes after")
                   ->type_name("DATE");
    command
        .add_option("--modification", typed->modification,
                    "A modification, by its entry or by words it was recorded with")
        ->type_name("ENTRY")
        ->excludes(at);
    command.add_flag("--why", typed->why, "The figures of the tests behind the words");
    line.on_run(command, [typed](Session& session) { return run(session, *typed); });
}

} // namespace sumpbook::cli
