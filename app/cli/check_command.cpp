// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/commands.h"
#include "app/cli/session.h"
#include "model/review/history_findings.h"
#include "model/review/record_findings.h"
#include "model/store/garage_file.h"
#include "reports/compose/integrity.h"

#include <algorithm>
#include <memory>

namespace sumpbook::cli {
namespace {

/// The file's own findings, in the shape of all others.
std::vector<review::Finding> file_findings(const store::GarageFile& file) {
    std::vector<review::Finding> findings;
    for (const auto& found : file.findings()) {
        findings.push_back(review::make_finding(found.id, "", found.sentence));
    }
    return findings;
}

Result<ExitStatus> run(Session& session, bool use_exit_code) {
    const auto whole = session.open_in_full();
    if (!whole) return pass_on(whole.error());
    const auto bikes = session.bikes();
    if (!bikes) return pass_on(bikes.error());
    auto findings = file_findings(**whole);
    for (const auto* bike : *bikes) {
        for (auto& finding : review::history_findings(*bike))
            findings.push_back(std::move(finding));
    }
    const store::GarageFile& file = **whole;
    for (auto& finding :
         review::conflict_findings(*bikes, session.options().bike.empty(), file.records()))
        findings.push_back(std::move(finding));
    for (auto& finding : review::erased_findings(*bikes, file.index(), file.records()))
        findings.push_back(std::move(finding));
    const compose::CheckedFile checked{file.bytes(), file.index().frames().size(), file.records().size(),
                                       std::move(findings)};
    session.show(compose::check_json(checked), compose::check_text(checked));
    const bool attention = std::ranges::any_of(checked.findings, [](const review::Finding& finding) {
        return finding.severity != review::Severity::info;
    });
    return attention && use_exit_code ? ExitStatus::findings : ExitStatus::done;
}

} // namespace

void add_check_command(CommandLine& line) {
    auto& command = line.command(
        "check", "Test the whole file and say what is odd in the record",
        {"sumpbook -g my.sumpbook check", "sumpbook -g my.sumpbook -b \"Old twin\" check --exit-code"});
    auto use_exit_code = std::make_shared<bool>(false);
    command.add_flag("--exit-code", *use_exit_code, "End with status 1 when there is something to look at");
    line.on_run(command, [use_exit_code](Session& session) { return run(session, *use_exit_code); });
}

} // namespace sumpbook::cli
