// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/commands.h"
#include "app/cli/garage_against.h"
#include "app/cli/proof_files.h"
#include "app/cli/session.h"
#include "model/store/garage_file.h"
#include "reports/compose/integrity.h"
#include "reports/compose/time_stamps.h"

#include <algorithm>
#include <memory>

namespace sumpbook::cli {
namespace {

struct TypedVerify {
    std::string fingerprint; ///< In its place.
    std::string named;       ///< Behind --fingerprint.
    std::string time_stamp;
    std::string ca;
};

/// Answers of authorities about one fingerprint: the file's named one, or those kept in the garage.
std::vector<store::Bytes> kept_time_stamps(const store::GarageFile& file,
                                           const store::TypedFingerprint& typed) {
    std::vector<store::Bytes> answers;
    for (const auto& record : file.fingerprints()) {
        const bool another = std::ranges::find(answers, record.time_stamp) == answers.end();
        if (!record.time_stamp.empty() && another && typed.matches(record.fingerprint()))
            answers.push_back(record.time_stamp);
    }
    return answers;
}

Result<std::vector<compose::CheckedTimeStamp>>
checked(const std::vector<store::Bytes>& answers, const std::optional<std::string>& ca, RecordedTime now) {
    std::vector<compose::CheckedTimeStamp> stamps;
    for (const auto& answer : answers) {
        auto one = compose::checked_time_stamp(answer, ca, now);
        if (!one) return pass_on(one.error());
        stamps.push_back(*std::move(one));
    }
    return stamps;
}

/// What is to be tested: the fingerprint, and the time stamp of --time-stamp, empty where there is none.
struct Wanted {
    store::TypedFingerprint fingerprint;
    store::Bytes time_stamp;
};

Result<Wanted> wanted(const TypedVerify& typed) {
    if (!typed.fingerprint.empty() && !typed.named.empty())
        return fail(ProblemKind::wrong_usage,
                    "Type the fingerprint once: by itself or behind --fingerprint.");
    const auto& text = typed.fingerprint.empty() ? typed.named : typed.fingerprint;
    Wanted wanted;
    if (!text.empty()) {
        auto fingerprint = store::TypedFingerprint::read(text);
        if (!fingerprint) return pass_on(fingerprint.error());
        wanted.fingerprint = *std::move(fingerprint);
    }
    if (typed.time_stamp.empty()) {
        if (!text.empty()) return wanted;
        return fail(
            ProblemKind::wrong_usage,
            "Which fingerprint? Type it as it was printed, or name a time stamp with --time-stamp FILE.");
    }
    auto answer = time_stamp_file(typed.time_stamp);
    if (!answer) return pass_on(answer.error());
    wanted.time_stamp = *std::move(answer);
    const auto stamp = store::read_time_stamp(wanted.time_stamp);
    if (!stamp) return in_file(stamp.error(), typed.time_stamp);
    if (!text.empty() && !wanted.fingerprint.matches(stamp->fingerprint)) {
        return refuse("The time stamp is about another fingerprint than the one typed: " +
                          store::hex_text(stamp->fingerprint) + ".",
                      {.file = typed.time_stamp});
    }
    if (text.empty()) wanted.fingerprint = store::TypedFingerprint::of(stamp->fingerprint);
    return wanted;
}

Result<ExitStatus> verify(Session& session, const TypedVerify& typed) {
    const auto asked = wanted(typed);
    if (!asked) return pass_on(asked.error());
    const auto ca = certificates_file(typed.ca);
    if (!ca) return pass_on(ca.error());
    const auto file = session.open_in_full();
    if (!file) return pass_on(file.error());
    const auto answers = asked->time_stamp.empty() ? kept_time_stamps(**file, asked->fingerprint)
                                                   : std::vector<store::Bytes>{asked->time_stamp};
    if (*ca && answers.empty()) {
        return refuse(
            "No time stamp of this fingerprint is kept in the garage, so there is nothing to test with "
            "that certificate. Name one with --time-stamp FILE.");
    }
    const auto stamps = checked(answers, *ca, session.recorded_time());
    if (!stamps) return pass_on(stamps.error());
    const auto garage = garage_against(session, **file, asked->fingerprint);
    if (!garage) return pass_on(garage.error());
    auto text = compose::verify_text(garage->check, garage->names);
    text.append(compose::time_stamps_text(*stamps));
    session.show(compose::verify_json(garage->check, garage->names, *stamps), text);
    // The answer is the purpose of the command, so it is the status too.
    const bool refused =
        std::ranges::any_of(*stamps, [](const auto& stamp) { return stamp.reason.has_value(); });
    return garage->check.lines_up() && !refused ? ExitStatus::done : ExitStatus::findings;
}

} // namespace

void add_verify_command(CommandLine& line) {
    auto& command = line.command(
        "verify", "Test the garage against a fingerprint printed earlier (status 1: it does not line up)",
        {"sumpbook -g my.sumpbook verify \"7k2mf 9q0tz ...\"",
         "sumpbook -g my.sumpbook -b \"Old twin\" verify --fingerprint \"7k2mf 9q0tz ...\"",
         "sumpbook -g my.sumpbook verify --time-stamp may.tsr --ca authority.pem"});
    auto typed = std::make_shared<TypedVerify>();
    command.add_option("fingerprint", typed->fingerprint,
                       "As printed or read from its QR code; blanks, hyphens and case do not matter");
    command.add_option("--fingerprint", typed->named, "The same, behind a name");
    command.add_option(
        "--time-stamp", typed->time_stamp,
        "Answer of a time-stamp authority (RFC 3161), with the fingerprint in it; absent: those kept "
        "in the garage");
    command.add_option("--ca", typed->ca, "Certificates that vouch for the authority (PEM)");
    line.on_run(command, [typed](Session& session) { return verify(session, *typed); });
}

} // namespace sumpbook::cli
