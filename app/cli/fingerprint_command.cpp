// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/asked_bike.h"
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

struct TypedVerify {
    std::string fingerprint; ///< In its place.
    std::string named;       ///< Behind --fingerprint.
};

Result<store::TypedFingerprint> typed_fingerprint(const TypedVerify& typed) {
    if (typed.fingerprint.empty() && typed.named.empty())
        return fail(ProblemKind::wrong_usage, "Which fingerprint? Type it as it was printed.");
    if (!typed.fingerprint.empty() && !typed.named.empty())
        return fail(ProblemKind::wrong_usage,
                    "Type the fingerprint once: by itself or behind --fingerprint.");
    return store::TypedFingerprint::read(typed.fingerprint.empty() ? typed.named : typed.fingerprint);
}

Result<ExitStatus> verify(Session& session, const TypedVerify& typed) {
    const auto fingerprint = typed_fingerprint(typed);
    if (!fingerprint) return pass_on(fingerprint.error());
    const auto file = session.open_in_full();
    if (!file) return pass_on(file.error());
    const auto bike = asked_bike(session);
    if (!bike) return pass_on(bike.error());
    const bool one = bike->has_value();
    const auto check = (*file)->check(*fingerprint, one ? std::optional((*bike)->id) : std::nullopt);
    const std::string name = one ? (*bike)->name : std::string();
    session.show(compose::verify_json(check, name), compose::verify_text(check, name));
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
        {"sumpbook -g my.sumpbook verify \"7k2mf 9q0tz ...\"",
         "sumpbook -g my.sumpbook -b \"Old twin\" verify --fingerprint \"7k2mf 9q0tz ...\""});
    auto typed = std::make_shared<TypedVerify>();
    command.add_option("fingerprint", typed->fingerprint,
                       "As printed; blanks, hyphens and case do not matter");
    command.add_option("--fingerprint", typed->named, "The same, behind a name");
    line.on_run(command, [typed](Session& session) { return verify(session, *typed); });
}

} // namespace sumpbook::cli
