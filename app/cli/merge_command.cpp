// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/commands.h"
#include "app/cli/new_file.h"
#include "app/cli/session.h"
#include "reports/compose/file_counts.h"
#include "reports/compose/merge.h"

#include <memory>

namespace sumpbook::cli {
namespace {

struct Typed {
    std::vector<std::string> files;
    std::vector<std::string> adopt;
    std::string to;
};

Result<store::MergePlan> plan_of(Session& session, const Typed& typed) {
    if (typed.files.size() < 2)
        return fail(ProblemKind::wrong_usage, "Name at least two garage files: sumpbook merge A B --to OUT");
    if (typed.adopt.empty()) return store::plan_merge(session.files(), typed.files, {});
    if (typed.files.size() > 2)
        return fail(ProblemKind::wrong_usage,
                    "With --adopt name two files: the garage that takes the bike over, and "
                    "the one that it comes from.");
    return store::plan_adoption(session.files(), typed.files[0], typed.files[1], typed.adopt, {});
}

/// Whatever stands in two versions; points into the garage.
std::vector<compose::OpenConflict> conflicts_in(const OpenGarage& open) {
    std::vector<const Bike*> bikes;
    for (const auto& bike : open.garage.bikes)
        bikes.push_back(&bike);
    return compose::open_conflicts(bikes, true, open.records);
}

Result<ExitStatus> merge(Session& session, const Typed& typed) {
    const auto plan = plan_of(session, typed);
    if (!plan) return pass_on(plan.error());
    if (const auto free = refuse_where_taken(typed.to); !free) return pass_on(free.error());
    for (const auto& notice : plan->notices)
        session.remark(notice);
    const compose::Merge merge{typed.files, typed.adopt, &*plan};
    show_first(session, compose::merge_plan_text(merge));
    std::size_t records = 0;
    for (const auto& chain : plan->chains)
        records += chain.entries;
    if (const auto yes =
            session.confirm("Write " + typed.to + " with " + compose::count_of(records, "record") + "?");
        !yes)
        return pass_on(yes.error());
    const auto written = store::write_out(session.files(), plan->set, typed.to, plan->mode);
    if (!written) return pass_on(written.error());
    const auto open = opened_garage(session, typed.to);
    if (!open) return pass_on(open.error());
    const auto conflicts = conflicts_in(*open);
    session.show(compose::merged_json(merge, *written, conflicts),
                 compose::merged_text(merge, *written, conflicts));
    return ExitStatus::done;
}

} // namespace

void add_merge_command(CommandLine& line) {
    auto& command = line.command(
        "merge", "Bring copies of a garage together in a new file; nothing of any of them is lost",
        {"sumpbook merge home.sumpbook laptop.sumpbook --to both.sumpbook",
         "sumpbook merge my.sumpbook bought.sumpbook --adopt \"Old twin\" --to new.sumpbook"});
    auto typed = std::make_shared<Typed>();
    command.add_option("files", typed->files, "Copies of one garage, two or more; they stay as they are")
        ->required();
    command.add_option("--to", typed->to, "The file to make")->type_name("FILE")->required();
    command
        .add_option("--adopt", typed->adopt,
                    "Take this bike of the second file, another garage, into the first; repeat for each")
        ->type_name("BIKE")
        ->allow_extra_args(false);
    line.on_run(command, [typed](Session& session) { return merge(session, *typed); });
}

} // namespace sumpbook::cli
