// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/commands.h"
#include "app/cli/session.h"
#include "model/store/garage_file.h"

#include <fmt/format.h>

#include <memory>

namespace sumpbook::cli {
namespace {

Result<ExitStatus> print_fingerprint(Session& session) {
    const auto file = session.file();
    if (!file) return pass_on(file.error());
    const auto record = (*file)->take_fingerprint(session.recorded_time());
    if (!record) return pass_on(record.error());
    const std::string text = store::fingerprint_text(record->fingerprint());
    document::Object json = document::result();
    json.add("fingerprint", text).add("sha256", store::hex_text(record->fingerprint()));
    json.add("printed", iso_text(record->printed)).add("records", record->entries);
    document::Document words;
    words.facts({{{"Fingerprint", text},
                  {"Covers", fmt::format("{} records", record->entries)},
                  {"First printed", iso_text(record->printed)}}});
    words.sentence("Keep it outside this file: on paper, with a buyer, in a letter. Later, \"sumpbook "
                   "verify\" tells whether "
                   "anything it covers was changed since. It cannot tell whether what was written was true.");
    session.show(json, words);
    return ExitStatus::done;
}

std::string_view slug(store::FingerprintAnswer answer) {
    switch (answer) {
    case store::FingerprintAnswer::unchanged:
        return "unchanged";
    case store::FingerprintAnswer::changed:
        return "changed";
    case store::FingerprintAnswer::missing:
        return "missing";
    case store::FingerprintAnswer::not_found:
        return "not-found";
    }
    return "not-found";
}

std::string unchanged_words(const store::FingerprintCheck& check) {
    if (check.subjects_not_held == 0) {
        return fmt::format(
            "Unchanged since that fingerprint: all {} records that it covers are here as they were.",
            check.covered_entries);
    }
    return fmt::format(
        "Unchanged since that fingerprint, as far as this file goes: {} records that it covers "
        "are here as they were. It also covers {} of which nothing is in this file.",
        check.covered_entries,
        check.subjects_not_held == 1
            ? std::string("one bike (or the garage itself)")
            : fmt::format("{} bikes (or the garage itself)", check.subjects_not_held));
}

document::Document answer_words(const store::FingerprintCheck& check) {
    document::Document words;
    switch (check.answer) {
    case store::FingerprintAnswer::unchanged:
        words.sentence(unchanged_words(check), document::Severity::good);
        break;
    case store::FingerprintAnswer::changed:
        words.sentence("Changed since that fingerprint. The first that does not line up: " + check.place +
                           ".",
                       document::Severity::danger);
        break;
    case store::FingerprintAnswer::missing:
        words.sentence("Something that the fingerprint covers is not in this file: " + check.place +
                           ". Another copy may have it.",
                       document::Severity::danger);
        break;
    case store::FingerprintAnswer::not_found:
        words.sentence("This fingerprint belongs to no state of this file: it was printed of another garage, "
                       "or of a copy that "
                       "went another way, or something was changed since.",
                       document::Severity::danger);
        return words;
    }
    words.facts({{{"Recorded later", fmt::format("{} records", check.recorded_later)},
                  {"Recorded before it, but not in the copy it was printed of",
                   fmt::format("{} records", check.recorded_earlier)},
                  {"Branched off before its end", fmt::format("{} records", check.forked_before)}}});
    words.sentence("This shows what was changed, not whether what was written is true.");
    return words;
}

Result<ExitStatus> verify(Session& session, const std::string& typed) {
    const auto fingerprint = store::TypedFingerprint::read(typed);
    if (!fingerprint) return pass_on(fingerprint.error());
    const auto file = session.open_in_full();
    if (!file) return pass_on(file.error());
    const auto check = (*file)->check(*fingerprint);
    document::Object json = document::result();
    json.add("answer", slug(check.answer));
    json.add("printed", check.printed ? document::Value(iso_text(*check.printed)) : document::Value());
    json.add("place", check.place.empty() ? document::Value() : document::Value(check.place));
    json.add("covered_records", check.covered_entries).add("recorded_later", check.recorded_later);
    json.add("recorded_earlier", check.recorded_earlier).add("forked_before", check.forked_before);
    json.add("subjects_not_held", check.subjects_not_held);
    session.show(json, answer_words(check));
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
