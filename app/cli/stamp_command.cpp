// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/commands.h"
#include "app/cli/input_file.h"
#include "app/cli/key_files.h"
#include "app/cli/output_file.h"
#include "app/cli/proof_files.h"
#include "app/cli/garage_against.h"
#include "app/cli/session.h"
#include "model/store/garage_file.h"
#include "reports/compose/stamp.h"
#include "reports/write/json.h"

#include <memory>

namespace sumpbook::cli {
namespace {

constexpr std::size_t largest_stamp_bytes = 64 * 1024;

struct TypedKey {
    std::string to;
    std::string name;
};

struct TypedSign {
    std::string key;
    std::string fingerprint;
    std::string name;
    std::string note;
    std::string to;
};

struct TypedVerify {
    std::string stamp;
    std::string key;
};

/// What a stamp would say of the name, so that a name that no stamp takes is refused before a key is made.
Result<std::string> name_for_stamps(const store::PrivateKey& key, const std::string& name,
                                    const Date& today) {
    const auto trial = store::sign_stamp(key, {}, today, name, {});
    if (!trial) return pass_on(trial.error());
    return trial->name;
}

Result<ExitStatus> new_key(Session& session, const TypedKey& typed) {
    store::SystemRandom random; // never from --sample-seed: anybody could make that key again
    const auto key = store::new_private_key(random);
    const auto name = name_for_stamps(key, typed.name, session.today());
    if (!name) return pass_on(name.error());
    const auto written = write_key_files(session.files(), typed.to, {key, *name});
    if (!written) return pass_on(written.error());
    const compose::NewKey made{typed.to, typed.to + ".pub", *name, store::public_key_of(key)};
    session.show(compose::new_key_json(made), compose::new_key_text(made));
    return ExitStatus::done;
}

/// The one typed, or that of the garage as it stands, which is saved in it as with every printing.
Result<store::TypedFingerprint> fingerprint_to_sign(Session& session, const std::string& typed) {
    if (!typed.empty()) return store::TypedFingerprint::read(typed);
    const auto file = session.file();
    if (!file) return pass_on(file.error());
    const auto record = (*file)->take_fingerprint(session.recorded_time());
    if (!record) return pass_on(record.error());
    return store::TypedFingerprint::of(record->fingerprint());
}

Result<ExitStatus> sign(Session& session, const TypedSign& typed) {
    const auto key = read_key_file(typed.key);
    if (!key) return pass_on(key.error());
    auto fingerprint = fingerprint_to_sign(session, typed.fingerprint);
    if (!fingerprint) return pass_on(fingerprint.error());
    const auto& name = typed.name.empty() ? key->name : typed.name;
    const auto stamp =
        store::sign_stamp(key->key, *std::move(fingerprint), session.today(), name, typed.note);
    if (!stamp) return pass_on(stamp.error());
    const bool as_json = session.options().json;
    if (!typed.to.empty()) {
        const auto written = put_out(session, store::stamp_text(*stamp), typed.to);
        if (!written || !as_json) return written;
    }
    session.print(as_json ? write::json(compose::stamp_json(*stamp)) : store::stamp_text(*stamp));
    return ExitStatus::done;
}

Result<ExitStatus> verify(Session& session, const TypedVerify& typed) {
    const auto key = read_public_key_file(typed.key);
    if (!key) return pass_on(key.error());
    const auto text = bytes_of_input(typed.stamp, largest_stamp_bytes, "This is too long to be a stamp.");
    if (!text) return pass_on(text.error());
    auto stamp = store::read_stamp(*text);
    if (!stamp) return in_file(stamp.error(), typed.stamp);
    auto checked = compose::checked_stamp(*std::move(stamp), *key);
    if (checked.answer == compose::StampAnswer::fits && !session.options().garage_file.empty()) {
        const auto file = session.open_in_full();
        if (!file) return pass_on(file.error());
        auto garage = garage_against(session, **file, checked.stamp.fingerprint);
        if (!garage) return pass_on(garage.error());
        checked.garage = std::move(garage->check);
        checked.names = std::move(garage->names);
    }
    session.show(compose::checked_stamp_json(checked), compose::checked_stamp_text(checked));
    const bool lines_up = !checked.garage || checked.garage->lines_up();
    return checked.answer == compose::StampAnswer::fits && lines_up ? ExitStatus::done : ExitStatus::findings;
}

void add_new_key(CommandLine& line, CLI::App& group) {
    auto& command =
        line.command(group, "new-key", "Make a pair of keys to sign with, once and for all",
                     {"sumpbook stamp new-key --to workshop.key --name \"Workshop at the canal\""});
    auto typed = std::make_shared<TypedKey>();
    command
        .add_option("--to", typed->to, "File for the private key; the public one goes beside it, with .pub")
        ->required();
    command.add_option("--name", typed->name, "Who signs, as it stands on every stamp");
    line.on_run(command, [typed](Session& session) { return new_key(session, *typed); });
}

void add_sign(CommandLine& line, CLI::App& group) {
    auto& command =
        line.command(group, "sign", "Sign a fingerprint: a few lines of text to mail, print or keep",
                     {"sumpbook -g my.sumpbook stamp sign --key workshop.key --note \"24 000 km service\" "
                      "--to service.stamp",
                      "sumpbook stamp sign --key workshop.key --fingerprint \"7k2mf 9q0tz ...\""});
    auto typed = std::make_shared<TypedSign>();
    command.add_option("--key", typed->key, "The private key")->required();
    command.add_option("--fingerprint", typed->fingerprint,
                       "As printed; absent: that of the garage as it stands");
    command.add_option("--name", typed->name, "Who signs; absent: the name that was given to the key");
    command.add_option("--note", typed->note, "One line that is signed with it");
    command.add_option("--to", typed->to, "File for the stamp; absent: shown here");
    line.on_run(command, [typed](Session& session) { return sign(session, *typed); });
}

void add_verify(CommandLine& line, CLI::App& group) {
    auto& command =
        line.command(group, "verify",
                     "Test a stamp, and the garage against its fingerprint (status 1: one does not line up)",
                     {"sumpbook -g my.sumpbook stamp verify service.stamp --key workshop.key.pub",
                      "sumpbook -g my.sumpbook -b \"Old twin\" stamp verify service.stamp --key "
                      "workshop.key.pub"});
    auto typed = std::make_shared<TypedVerify>();
    command.add_option("stamp", typed->stamp, "File with the stamp")->required();
    command.add_option("--key", typed->key, "The signer's public key, as the signer gave it out")->required();
    line.on_run(command, [typed](Session& session) { return verify(session, *typed); });
}

} // namespace

void add_stamp_command(CommandLine& line) {
    auto& group = line.group("stamp", "Sign a fingerprint with a key, and test what others signed");
    add_new_key(line, group);
    add_sign(line, group);
    add_verify(line, group);
}

} // namespace sumpbook::cli
