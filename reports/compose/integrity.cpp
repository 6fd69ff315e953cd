// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/integrity.h"

#include "model/review/subject_name.h"
#include "reports/compose/file_counts.h"
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
    case store::FingerprintAnswer::not_covered:
        return "not-covered";
    case store::FingerprintAnswer::partly:
        return "partly";
    case store::FingerprintAnswer::cannot_tell:
        return "cannot-tell";
    }
    return "not-found";
}

std::string records(std::uint64_t number) {
    return fmt::format("{} {}", number, number == 1 ? "record" : "records");
}

std::string cut_short_words(const CheckedFile& file) {
    return fmt::format(
        "What is whole verifies: {}. But the file ends in the middle of a save, which is left out. "
        "Look whether your last entry is there; if this is a copy, compare it with the original.",
        records(file.records));
}

std::string check_words(const CheckedFile& file) {
    if (file.broken_stretches > 0) {
        return fmt::format("The file is damaged: {} of it {} not verify. {} in {} do.",
                           file.broken_stretches == 1 ? std::string("1 stretch")
                                                      : fmt::format("{} stretches", file.broken_stretches),
                           file.broken_stretches == 1 ? "does" : "do", records(file.records),
                           count_of(file.frames, "frame"));
    }
    if (file.damaged_attachments > 0) {
        const auto which = file.attachments == 1 ? std::string("its attachment")
                                                 : fmt::format("{} of its {} attachments",
                                                               file.damaged_attachments, file.attachments);
        return fmt::format("The file is damaged: the bytes of {} are not as they were saved. All {} verify.",
                           which, records(file.records));
    }
    if (file.torn_bytes > 0) return cut_short_words(file);
    return fmt::format("The file verifies: {}{}, every one as it was written.", records(file.records),
                       file.attachments == 0 ? "" : " and " + count_of(file.attachments, "attachment"));
}

std::string listed(const std::vector<std::string>& names) {
    std::string all;
    for (std::size_t i = 0; i < names.size(); ++i)
        all += (i == 0 ? "" : i + 1 == names.size() ? " and " : ", ") + names[i];
    return all;
}

std::string not_held_words(const store::FingerprintCheck& check) {
    return check.subjects_not_held == 1
               ? std::string("one bike (or the garage itself)")
               : fmt::format("{} bikes (or the garage itself)", check.subjects_not_held);
}

std::string unchanged_words(const store::FingerprintCheck& check, const std::string& bike) {
    if (!bike.empty()) {
        return fmt::format(
            "{}: unchanged since that fingerprint. Everything that it covers of this bike, {}, is "
            "here as it was. Nothing is said about other bikes.",
            bike, records(check.covered_entries));
    }
    if (check.subjects_not_held == 0) {
        return fmt::format(
            "Unchanged since that fingerprint: everything that it covers, {}, is here as it was.",
            records(check.covered_entries));
    }
    return fmt::format(
        "Unchanged since that fingerprint, as far as this file goes: what it covers of it, {}, is as it "
        "was. It also covers {} of which nothing is in this file.",
        records(check.covered_entries), not_held_words(check));
}

std::string partly_words(const store::FingerprintCheck& check, const VerifiedNames& names) {
    const auto tested = fmt::format("{}, {}", listed(names.tested), records(check.covered_entries));
    const auto begins =
        check.known_by_heads
            ? "Unchanged since that fingerprint: " + tested + "."
            : "Too little can be tested here to say that nothing was changed. What can is as it was: " +
                  tested + ".";
    return fmt::format("{} It also covers {} that {} not found in this file.", begins, not_held_words(check),
                       check.subjects_not_held == 1 ? "was" : "were");
}

/// Of one and of several the same words fit.
std::string untold_words(const std::string& names, const store::FingerprintCheck& check) {
    return "That fingerprint says nothing that can be tested about " + names +
           ": of another garage, begun later, or rewritten since." +
           (check.searched ? "" : " Not all its earlier states could be tried, so it may fit after all.");
}

std::string not_found_words(const store::FingerprintCheck& check) {
    if (!check.searched) {
        return "It cannot be told whether an earlier state of this file matches this fingerprint: the file "
               "is too large to try all of them, it keeps no record of this fingerprint, and its present "
               "state does not match. Verify a copy in which it was printed, which keeps that record, or "
               "merge it into this one.";
    }
    return "No state of this file matches this fingerprint: it was printed of another garage, or of a "
           "copy that went another way, or something was changed or cut off since. If it was printed of this "
           "garage, look for a backup or a copy of that day that it does match, and compare the two; until "
           "then do not rely on this file.";
}

document::Array array_of(const std::vector<std::string>& names) {
    return document::Array(names.begin(), names.end());
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

VerifiedNames verified_names(const store::FingerprintCheck& check, const Garage& garage,
                             const SubjectId& settings, const std::string& bike) {
    VerifiedNames names{bike, {}, {}};
    for (const auto& subject : check.tested)
        names.tested.push_back(review::subject_words(garage, settings, subject));
    for (const auto& subject : check.untold)
        names.untold.push_back(review::subject_words(garage, settings, subject));
    return names;
}

document::Value verify_json(const store::FingerprintCheck& check, const VerifiedNames& names,
                            const std::vector<CheckedTimeStamp>& stamps) {
    document::Object json = document::result();
    json.add("answer", slug(check.answer))
        .add("bike", names.bike.empty() ? document::Value() : document::Value(names.bike));
    json.add("lines_up", check.lines_up());
    json.add("tested", array_of(names.tested)).add("untold", array_of(names.untold));
    json.add("printed", check.printed ? document::Value(iso_text(*check.printed)) : document::Value());
    json.add("place", check.place.empty() ? document::Value() : document::Value(check.place));
    json.add("covered_records", check.covered_entries).add("recorded_later", check.recorded_later);
    json.add("recorded_earlier", check.recorded_earlier).add("forked_before", check.forked_before);
    json.add("records_untold", check.entries_untold);
    json.add("subjects_not_held", check.subjects_not_held).add("searched_all", check.searched);
    json.add("time_stamps", time_stamps_json(stamps));
    return json;
}

document::Document verify_text(const store::FingerprintCheck& check, const VerifiedNames& names) {
    document::Document words;
    document::Facts facts{{{"Answer", std::string(slug(check.answer))}}};
    const auto& bike = names.bike;
    const std::string of = bike.empty() ? "" : bike + ": ";
    switch (check.answer) {
    case store::FingerprintAnswer::unchanged:
        words.sentence(unchanged_words(check, bike), document::Severity::good);
        break;
    case store::FingerprintAnswer::changed:
        words.sentence(of + "Changed since that fingerprint. The first known not to line up: " + check.place +
                           ".",
                       document::Severity::danger);
        break;
    case store::FingerprintAnswer::missing:
        words.sentence(of + "Something that the fingerprint covers is not in this file: " + check.place +
                           (check.place.ends_with("...") ? "" : ".") + " Another copy may have it.",
                       document::Severity::danger);
        break;
    case store::FingerprintAnswer::not_found:
        words.sentence(not_found_words(check), document::Severity::danger);
        if (!check.place.empty())
            words.sentence("The first that does not line up with what stands behind it: " + check.place +
                           ".");
        words.facts(std::move(facts));
        return words;
    case store::FingerprintAnswer::not_covered:
        words.sentence(
            of + "That fingerprint covers nothing of this bike: it was printed before the first entry of "
                 "it was in the garage.",
            document::Severity::caution);
        words.facts(std::move(facts));
        return words;
    case store::FingerprintAnswer::partly:
        words.sentence(partly_words(check, names),
                       check.lines_up() ? document::Severity::good : document::Severity::danger);
        break;
    case store::FingerprintAnswer::cannot_tell:
        words.sentence(untold_words(bike, check), document::Severity::caution);
        words.facts(std::move(facts));
        return words;
    }
    if (!names.untold.empty())
        words.sentence(untold_words(listed(names.untold), check), document::Severity::caution);
    facts.lines.emplace_back("Recorded later", records(check.recorded_later));
    facts.lines.emplace_back("Recorded before it, but not in the copy it was printed of",
                             records(check.recorded_earlier));
    facts.lines.emplace_back("Branched off before its end", records(check.forked_before));
    if (check.entries_untold > 0)
        facts.lines.emplace_back("It cannot be told whether it covers", records(check.entries_untold));
    words.facts(std::move(facts));
    words.sentence(
        "This shows what was changed since the fingerprint was printed, not whether what was written is "
        "true, nor what was changed before.");
    return words;
}

document::Value check_json(const CheckedFile& file) {
    document::Object json = document::result();
    json.add("verifies", file.verifies()).add("bytes", file.bytes).add("frames", file.frames);
    json.add("records", file.records).add("attachments", file.attachments);
    json.add("damaged_attachments", file.damaged_attachments).add("torn_bytes", file.torn_bytes);
    json.add("broken_stretches", file.broken_stretches).add("findings", findings_json(file.findings));
    return json;
}

document::Document check_text(const CheckedFile& file) {
    document::Document text;
    text.sentence(check_words(file), !file.verifies()      ? document::Severity::danger
                                     : file.torn_bytes > 0 ? document::Severity::caution
                                                           : document::Severity::good);
    if (file.verifies() && file.torn_bytes > 0)
        text.sentence(
            "Whether more was cut off, or the history was rewritten throughout, only a fingerprint kept "
            "outside the file shows (\"sumpbook verify\").");
    else if (file.verifies())
        text.sentence("A history that was rewritten throughout, or cut off cleanly at its end, looks like "
                      "this too: only a fingerprint kept outside the file shows that (\"sumpbook verify\").");
    text.append(findings_text(file.findings));
    if (file.broken_stretches > 0)
        text.sentence("Nothing was changed. Go back to a backup, or save what verifies: sumpbook recover " +
                      typed_name(file.path) + " --to NEW");
    return text;
}

} // namespace sumpbook::compose
