// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/commands.h"
#include "app/cli/new_file.h"
#include "app/cli/session.h"
#include "app/cli/suggestions.h"
#include "model/store/garage_file.h"
#include "reports/compose/hand_over.h"

#include <memory>

namespace sumpbook::cli {
namespace {

struct Typed {
    std::string to;
    std::vector<std::string> without;
};

Result<store::Withheld> withheld_of(const std::vector<std::string>& words) {
    store::Withheld withheld;
    for (const auto& word : words) {
        if (word == "money") {
            withheld.money = true;
        } else if (word == "private") {
            withheld.personal = true;
        } else if (word == "attachments") {
            withheld.attachments = true;
        } else {
            return fail(ProblemKind::wrong_usage,
                        "There is no part \"" + word + "\" to leave out." +
                            did_you_mean(word, {"money", "private", "attachments"}) +
                            " The parts are: money, private, attachments.");
        }
    }
    return withheld;
}

/// The newest fingerprint recorded in the file that lines up with it.
std::optional<store::FingerprintRecord> fingerprint_that_applies(const store::GarageFile& file) {
    std::optional<store::FingerprintRecord> newest;
    for (const auto& record : file.fingerprints()) {
        const auto typed = store::TypedFingerprint::read(store::hex_text(record.fingerprint()));
        if (!typed || file.check(*typed).answer != store::FingerprintAnswer::unchanged) continue;
        if (!newest || newest->printed < record.printed) newest = record;
    }
    return newest;
}

/// A fresh fingerprint covers all that is handed over. A garage that cannot be written to is handed over with
/// those it has.
void print_fingerprint(Session& session) {
    const auto file = session.file();
    if (!file) return; // said by what comes next
    const auto record = (*file)->take_fingerprint(session.recorded_time());
    if (!record)
        session.remark("No new fingerprint could be recorded in the garage: " + record.error().sentence);
}

Result<compose::HandedOver> written(Session& session, const store::HandOverPlan& plan,
                                    const std::string& to) {
    auto out = store::write_out(session.files(), plan.set, to, plan.mode);
    if (!out) return pass_on(out.error());
    const auto file =
        store::GarageFile::open({session.files(), session.random(), session.world().state_folder, {}}, to,
                                store::ScanDepth::everything);
    if (!file) return pass_on(file.error());
    return compose::HandedOver{*std::move(out), fingerprint_that_applies(*file)};
}

Result<ExitStatus> hand_over(Session& session, const Typed& typed) {
    const auto withheld = withheld_of(typed.without);
    if (!withheld) return pass_on(withheld.error());
    const auto path = session.garage_path();
    if (!path) return pass_on(path.error());
    const auto bike = session.one_bike();
    if (!bike) return pass_on(bike.error());
    if (const auto free = refuse_where_taken(typed.to); !free) return pass_on(free.error());
    print_fingerprint(session);
    auto plan = store::plan_hand_over(session.files(), *path, (*bike)->id, *withheld, {});
    if (!plan) return pass_on(plan.error());
    plan->preview.bike = (*bike)->details.value.name;
    for (const auto& notice : plan->notices)
        session.remark(notice);
    show_first(session, compose::hand_over_preview_text(plan->preview, *withheld));
    const auto file = written(session, *plan, typed.to);
    if (!file) return pass_on(file.error());
    session.show(compose::handed_over_json(plan->preview, *withheld, *file),
                 compose::handed_over_text(plan->preview, *file));
    return ExitStatus::done;
}

} // namespace

void add_handover_command(CommandLine& line) {
    auto& command = line.command(
        "handover", "A file for a buyer: one bike, with parts left out if you like, that still verifies",
        {"sumpbook -g my.sumpbook handover --bike \"Old twin\" --to old-twin.sumpbook",
         "sumpbook -g my.sumpbook handover --bike \"Old twin\" --without money,private --to "
         "old-twin.sumpbook"});
    auto typed = std::make_shared<Typed>();
    command.add_option("--to", typed->to, "The file to make")->type_name("FILE")->required();
    command
        .add_option("--without", typed->without,
                    "What stays with you: money (prices), private (notes, names, places), attachments")
        ->type_name("PARTS")
        ->delimiter(',');
    line.on_run(command, [typed](Session& session) { return hand_over(session, *typed); });
}

} // namespace sumpbook::cli
