// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/commands.h"
#include "app/cli/output_file.h"
#include "app/cli/proof_files.h"
#include "app/cli/session.h"
#include "model/store/garage_file.h"
#include "reports/compose/integrity.h"
#include "reports/compose/time_stamps.h"
#include "reports/write/qr_code.h"

#include <memory>

namespace sumpbook::cli {
namespace {

struct TypedFingerprintCommand {
    bool qr = false;
    std::string qr_to;
    std::string request;
    std::string attach;
    std::string query;
    std::string ca;
};

Result<void> is_answer_to(const store::TimeStamp& stamp, const TypedFingerprintCommand& typed) {
    if (typed.query.empty()) return {};
    const auto query = time_stamp_file(typed.query);
    if (!query) return pass_on(query.error());
    const auto fits = store::answers_query(stamp, *query);
    if (!fits) return in_file(fits.error(), typed.attach);
    return {};
}

/// Takes an answer into the garage, unless it is known to be worth nothing.
Result<ExitStatus> attach(Session& session, const TypedFingerprintCommand& typed) {
    const auto answer = time_stamp_file(typed.attach);
    if (!answer) return pass_on(answer.error());
    const auto ca = certificates_file(typed.ca);
    if (!ca) return pass_on(ca.error());
    const auto stamp = compose::checked_time_stamp(*answer, *ca, session.recorded_time());
    if (!stamp) return in_file(stamp.error(), typed.attach);
    if (stamp->reason) return refuse(*stamp->reason + " It was not taken in.", {.file = typed.attach});
    if (const auto fits = is_answer_to(stamp->stamp, typed); !fits) return pass_on(fits.error());
    const auto file = session.file();
    if (!file) return pass_on(file.error());
    const auto record = (*file)->keep_time_stamp(stamp->stamp.fingerprint, *answer);
    if (!record && record.error().kind == ProblemKind::refused) return in_file(record.error(), typed.attach);
    if (!record) return pass_on(record.error());
    auto text = compose::time_stamps_text({*stamp});
    text.sentence("It is kept in the garage beside the fingerprint " +
                  store::fingerprint_text(stamp->stamp.fingerprint) +
                  " and goes with it into copies, merges and hand-overs.");
    session.show(compose::fingerprint_json(*record, {*stamp}, nullptr), text);
    return ExitStatus::done;
}

Result<ExitStatus> write_query(Session& session, const store::Hash256& fingerprint, const std::string& to) {
    store::SystemRandom random; // a nonce that nobody can foresee, also in examples
    const auto query = store::time_stamp_query(fingerprint, random);
    const auto written = put_out(session, std::string(query.begin(), query.end()), to);
    if (written) {
        session.remark("Send it to a time-stamp authority (RFC 3161) and take its answer in with: sumpbook "
                       "fingerprint --attach FILE.tsr --query " +
                       to + " --ca AUTHORITY.pem");
    }
    return written;
}

void show(Session& session, const store::FingerprintRecord& record, bool with_qr) {
    const auto words = compose::fingerprint_words(record);
    if (!with_qr) return session.show(compose::fingerprint_json(record, {}, nullptr), words);
    const auto code = compose::fingerprint_code(record.fingerprint());
    session.show(compose::fingerprint_json(record, {}, &code), words);
    if (session.options().json) return;
    if (session.options().plain) {
        for (const auto& row : plot::qr_rows(code))
            session.print(row + '\n');
        return;
    }
    const auto& world = session.world();
    const bool colour = world.out_is_terminal && !world.wants_no_colour && !session.options().no_color;
    session.print("\n" + write::qr_blocks(code, colour));
}

Result<ExitStatus> print_fingerprint(Session& session, const TypedFingerprintCommand& typed) {
    if (!typed.attach.empty()) return attach(session, typed);
    const auto file = session.file();
    if (!file) return pass_on(file.error());
    const auto record = (*file)->take_fingerprint(session.recorded_time());
    if (!record) return pass_on(record.error());
    const auto fingerprint = record->fingerprint();
    if (!typed.request.empty()) {
        if (const auto asked = write_query(session, fingerprint, typed.request); !asked) return asked;
    }
    if (!typed.qr_to.empty()) {
        const auto svg = write::qr_svg(compose::fingerprint_code(fingerprint),
                                       "Fingerprint " + store::fingerprint_text(fingerprint));
        if (const auto drawn = put_out(session, svg, typed.qr_to); !drawn) return drawn;
    }
    const bool output_is_taken = typed.request == "-" || typed.qr_to == "-";
    if (!output_is_taken) show(session, *record, typed.qr);
    return ExitStatus::done;
}

} // namespace

void add_fingerprint_command(CommandLine& line) {
    auto& command = line.command(
        "fingerprint", "Print the fingerprint of the garage as it stands",
        {"sumpbook -g my.sumpbook fingerprint --qr", "sumpbook -g my.sumpbook fingerprint --request may.tsq",
         "sumpbook -g my.sumpbook fingerprint --attach may.tsr --query may.tsq --ca authority.pem"});
    auto typed = std::make_shared<TypedFingerprintCommand>();
    command.add_flag("--qr", typed->qr, "Show it as a QR code too, with all 256 bits");
    command.add_option("--qr-to", typed->qr_to, "File for the QR code, as SVG");
    command.add_option("--request", typed->request,
                       "File for a question to a time-stamp authority (RFC 3161)");
    auto* attached =
        command.add_option("--attach", typed->attach, "The authority's answer, to be kept in the garage");
    command.add_option("--query", typed->query, "The question that the answer must belong to")
        ->needs(attached);
    command.add_option("--ca", typed->ca, "Certificates that vouch for the authority (PEM)")->needs(attached);
    line.on_run(command, [typed](Session& session) { return print_fingerprint(session, *typed); });
}

} // namespace sumpbook::cli
