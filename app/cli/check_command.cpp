// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/commands.h"
#include "app/cli/session.h"
#include "model/review/damage_findings.h"
#include "model/review/file_findings.h"
#include "model/review/history_findings.h"
#include "model/review/record_findings.h"
#include "reports/compose/integrity.h"

#include <algorithm>
#include <memory>

namespace sumpbook::cli {
namespace {

struct Typed {
    bool exit_code = false;
    bool strict = false;
};

/// The end of the day that was asked for, or now where that is later: what was recorded behind it was
/// recorded in the future.
RecordedTime latest(const Session& session) {
    constexpr std::int64_t a_day_in_seconds = 86'400;
    const auto days = std::chrono::sys_days{session.today()}.time_since_epoch().count();
    return std::max(session.recorded_time(), RecordedTime{(days + 1) * a_day_in_seconds});
}

/// The record as far as it verifies, and every attachment by itself: one that is damaged stops nothing.
Result<compose::CheckedFile> checked(Session& session) {
    const auto opened = session.file();
    if (!opened) return pass_on(opened.error());
    const store::GarageFile& file = **opened;
    const auto damaged = file.damaged_attachments();
    if (!damaged) return pass_on(damaged.error());
    const auto open = session.open();
    if (!open) return pass_on(open.error());
    const auto bikes = session.bikes();
    if (!bikes) return pass_on(bikes.error());
    compose::CheckedFile result;
    result.bytes = file.bytes();
    result.frames = file.index().frames().size();
    result.records = file.records().size();
    result.attachments = static_cast<std::size_t>(
        std::ranges::count_if(file.attachments(), [](const auto& attachment) { return attachment.shown; }));
    result.damaged_attachments = damaged->size();
    result.torn_bytes = file.torn_bytes();
    result.findings = review::file_findings(file, (*open)->garage, latest(session), *damaged);
    for (const auto* bike : *bikes) {
        for (auto& finding : review::history_findings(*bike))
            result.findings.push_back(std::move(finding));
    }
    const bool all = session.options().bike.empty();
    for (auto& finding : review::conflict_findings(*bikes, all, file.records()))
        result.findings.push_back(std::move(finding));
    for (auto& finding : review::erased_findings(*bikes, file.index(), file.records()))
        result.findings.push_back(std::move(finding));
    return result;
}

/// A file that does not open: each stretch that does not verify is named.
Result<ExitStatus> show_damage(Session& session, const Problem& problem) {
    const auto path = session.garage_path();
    if (!path) return pass_on(path.error());
    const auto plan = store::plan_recovery(session.files(), session.random(), *path, {});
    if (!plan && plan.error().kind == ProblemKind::refused)
        return fail(ProblemKind::damaged, *path + ": " + problem.sentence + " " +
                                              "Nothing in it verifies as a part of a garage, so there is nothing to "
                                              "recover. Use your newest backup.");
    if (!plan || plan->whole()) return pass_on(problem);
    compose::CheckedFile result;
    result.path = *path;
    result.frames = plan->set.frames().size();
    result.records = plan->entries;
    result.broken_stretches = plan->broken.size() + (plan->garage == store::GarageKnown::header ? 0 : 1);
    result.findings = review::damage_findings(*plan);
    session.show(compose::check_json(result), compose::check_text(result));
    return ExitStatus::damaged;
}

Result<ExitStatus> run(Session& session, const Typed& typed) {
    const auto result = checked(session);
    if (!result && result.error().kind == ProblemKind::damaged) return show_damage(session, result.error());
    if (!result) return pass_on(result.error());
    session.show(compose::check_json(*result), compose::check_text(*result));
    if (!result->verifies()) return ExitStatus::damaged;
    const auto least = typed.strict ? review::Severity::info : review::Severity::doubt;
    const bool attention = std::ranges::any_of(
        result->findings, [&](const review::Finding& finding) { return finding.severity >= least; });
    return attention && (typed.exit_code || typed.strict) ? ExitStatus::findings : ExitStatus::done;
}

} // namespace

void add_check_command(CommandLine& line) {
    auto& command = line.command("check", "Test the whole file and say what is odd in the record",
                                 {"sumpbook -g my.sumpbook check",
                                  "sumpbook -g my.sumpbook -b \"Old twin\" check --exit-code",
                                  "sumpbook -g my.sumpbook check --strict"});
    auto typed = std::make_shared<Typed>();
    command.add_flag("--exit-code", typed->exit_code,
                     "End with status 1 when a finding is a doubt or serious");
    command.add_flag("--strict", typed->strict,
                     "End with status 1 when there is any finding at all, also one that only informs");
    line.on_run(command, [typed](Session& session) { return run(session, *typed); });
}

} // namespace sumpbook::cli
