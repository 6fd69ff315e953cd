// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/commands.h"
#include "app/cli/session.h"
#include "model/store/garage_file.h"
#include "reports/compose/integrity.h"

#include <memory>

namespace sumpbook::cli {
namespace {

Result<ExitStatus> print_fingerprint(Session& session) {
    const auto file = session.file();
    if (!file) return pass_on(file.error());
    const auto record = (*file)->take_fingerprint(session.recorded_time());
    if (!record) return pass_on(record.error());
    session.show(compose::fingerprint_json(*record), compose::fingerprint_words(*record));
    return ExitStatus::done;
}

Result<ExitStatus> verify(Session& session, const std::string& typed) {
    const auto fingerprint = store::TypedFingerprint::read(typed);
    if (!fingerprint) return pass_on(fingerprint.error());
    const auto file = session.open_in_full();
    if (!file) return pass_on(file.error());
    const auto check = (*file)->check(*fingerprint);
    session.show(compose::verify_json(check), compose::verify_text(check));
    // The answer is the purpose of the command, so it is the status too.
    return check.answer == store::FingerprintAnswer::unchanged ? ExitStatus::done : ExitStatus::findings;
}

} // namespace

void add_fingerprint_command(CommandLine& line) {
    auto& command = line.command("fingerprint", "Print the fingerprint of the garage as it stands",
                                 {"sumpbook -g my.sumpbook fingerprint"});
    line.on_run(command, [](Session& session) { return print_fingerprint(session); });
}

void add_verify_command(CommandLine& line) {
    auto& command = line.command(
        "verify", "Test the garage against a fingerprint printed earlier (status 1: it does not line up)",
        {"sumpbook -g my.sumpbook verify \"7k2mf 9q0tz ...\""});
    auto typed = std::make_shared<std::string>();
    command.add_option("fingerprint", *typed, "As printed; blanks, hyphens and case do not matter")
        ->required();
    line.on_run(command, [typed](Session& session) { return verify(session, *typed); });
}

} // namespace sumpbook::cli
