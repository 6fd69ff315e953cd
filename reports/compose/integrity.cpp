// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/integrity.h"

#include "reports/compose/findings.h"

#include <fmt/format.h>

namespace sumpbook::compose {
namespace {

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

std::string records(std::uint64_t number) {
    return fmt::format("{} {}", number, number == 1 ? "record" : "records");
}

std::string unchanged_words(const store::FingerprintCheck& check) {
    if (check.subjects_not_held == 0) {
        return fmt::format(
            "Unchanged since that fingerprint: everything that it covers, {}, is here as it was.",
            records(check.covered_entries));
    }
    return fmt::format(
        "Unchanged since that fingerprint, as far as this file goes: what it covers of it, {}, is as it "
        "was. It also covers {} of which nothing is in this file.",
        records(check.covered_entries),
        check.subjects_not_held == 1
            ? std::string("one bike (or the garage itself)")
            : fmt::format("{} bikes (or the garage itself)", check.subjects_not_held));
}

} // namespace

document::Value fingerprint_json(const store::FingerprintRecord& record,
                                 const std::vector<CheckedTimeStamp>& stamps, const plot::QrCode* code) {
    document::Object json = document::result();
    json.add("fingerprint", store::fingerprint_text(record.fingerprint()));
    json.add("sha256", store::hex_text(record.fingerprint()));
    json.add("printed", iso_text(record.printed)).add("records", record.entries);
    if (!stamps.empty()) json.add("time_stamps", time_stamps_json(stamps));
    if (code != nullptr) {
        const auto rows = plot::qr_rows(*code);
        json.add("qr", document::Array(rows.begin(), rows.end()));
    }
    return json;
}

plot::QrCode fingerprint_code(const store::Hash256& fingerprint) {
    std::string text = store::hex_text(fingerprint);
    for (char& c : text) {
        if (c >= 'a' && c <= 'f') c = static_cast<char>(c - 'a' + 'A');
    }
    return plot::qr_code(text);
}

document::Document fingerprint_words(const store::FingerprintRecord& record) {
    document::Document words;
    words.facts({{{"Fingerprint", store::fingerprint_text(record.fingerprint())},
                  {"Covers", records(record.entries)},
                  {"First printed", iso_text(record.printed)}}});
    words.sentence(
        "Keep it outside this file: on paper, with a buyer, in a letter. Later, \"sumpbook verify\" tells "
        "whether anything it covers was changed or cut off since. It cannot tell whether what was "
        "written was true, nor what was changed before it was first printed.");
    return words;
}

document::Value verify_json(const store::FingerprintCheck& check,
                            const std::vector<CheckedTimeStamp>& stamps) {
    document::Object json = document::result();
    json.add("answer", slug(check.answer));
    json.add("printed", check.printed ? document::Value(iso_text(*check.printed)) : document::Value());
    json.add("place", check.place.empty() ? document::Value() : document::Value(check.place));
    json.add("covered_records", check.covered_entries).add("recorded_later", check.recorded_later);
    json.add("recorded_earlier", check.recorded_earlier).add("forked_before", check.forked_before);
    json.add("subjects_not_held", check.subjects_not_held);
    json.add("time_stamps", time_stamps_json(stamps));
    return json;
}

document::Document verify_text(const store::FingerprintCheck& check) {
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
        words.sentence(
            "No state of this file matches this fingerprint: it was printed of another garage, or of a "
            "copy that went another way, or something was changed or cut off since.",
            document::Severity::danger);
        if (!check.place.empty())
            words.sentence("The first that does not line up with what stands behind it: " + check.place +
                           ".");
        return words;
    }
    words.facts(
        {{{"Recorded later", records(check.recorded_later)},
          {"Recorded before it, but not in the copy it was printed of", records(check.recorded_earlier)},
          {"Branched off before its end", records(check.forked_before)}}});
    words.sentence(
        "This shows what was changed since the fingerprint was printed, not whether what was written is "
        "true, nor what was changed before.");
    return words;
}

document::Value check_json(const CheckedFile& file) {
    document::Object json = document::result();
    json.add("verifies", true).add("bytes", file.bytes).add("frames", file.frames);
    json.add("records", file.records).add("findings", findings_json(file.findings));
    return json;
}

document::Document check_text(const CheckedFile& file) {
    document::Document text;
    text.sentence(fmt::format("The file verifies: {}, every one as it was written.", records(file.records)),
                  document::Severity::good);
    text.sentence(
        "A history that was rewritten throughout, or cut off cleanly at its end, looks like this too: only a "
        "fingerprint kept outside the file shows that (\"sumpbook verify\").");
    text.append(findings_text(file.findings));
    return text;
}

} // namespace sumpbook::compose
