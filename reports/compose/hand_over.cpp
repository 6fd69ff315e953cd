// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/hand_over.h"

#include "reports/compose/file_counts.h"

namespace sumpbook::compose {
namespace {

using document::Document;
using store::HandOverPreview;
using store::Withheld;

std::string day(const std::optional<RecordedTime>& time) {
    return time ? iso_text(*time).substr(0, 10) : "?";
}

std::string left_out_words(const Withheld& withheld) {
    std::string text;
    const auto add = [&text](bool out, const std::string& what) {
        if (out) text += (text.empty() ? "" : "; ") + what;
    };
    add(withheld.money, "every price and amount");
    add(withheld.personal, "notes, names, places, who did it, and the names of attachments");
    add(withheld.attachments, "the bytes of attachments");
    return text.empty() ? "nothing" : text;
}

std::string hidden_words(std::size_t records, const std::string& what) {
    if (records == 0) return "there are none";
    return "that " + count_of(records, "record") + (records == 1 ? " stands" : " stand") +
           " in a save that has some; not " + what;
}

std::string attachment_words(const HandOverPreview& preview, const Withheld& withheld) {
    if (!withheld.attachments) {
        return count_of(preview.attachments, "attachment") +
               ", whole: look into them first, a picture or an invoice holds more than one thinks";
    }
    const std::string names = ", with their names and sizes (leave out private too to hide these)";
    return "how many there are, " + std::to_string(preview.attachments) + (withheld.personal ? "" : names) +
           "; not what they hold";
}

std::string money_words(const HandOverPreview& preview, const Withheld& withheld) {
    if (withheld.money) return hidden_words(preview.entries_with_money, "how much");
    if (preview.entries_showing_money == 0) return "there are none";
    return "every price, in " + count_of(preview.entries_showing_money, "record");
}

std::string private_words(const HandOverPreview& preview, const Withheld& withheld) {
    if (withheld.personal) return hidden_words(preview.entries_with_private, "what they say");
    if (preview.entries_showing_private == 0) return "there are none";
    return "every note, name and place, in " + count_of(preview.entries_showing_private, "record") +
           (preview.shows_plate ? ", and the number plate" : "");
}

/// What can be seen of the parts left out (the names of this list are those of the preview's fields).
document::Facts still_shows(const HandOverPreview& preview, const Withheld& withheld) {
    document::Facts facts;
    const auto line = [&facts](const std::string& what, const std::string& how) {
        facts.lines.emplace_back(what, how);
    };
    line("The bike", "all readings, dates, work, parts and samples; what was corrected or withdrawn, too");
    line("Money", money_words(preview, withheld));
    line("Private notes", private_words(preview, withheld));
    if (preview.attachments > 0) line("Attachments", attachment_words(preview, withheld));
    if (preview.already_withheld > 0)
        line("Left out before",
             count_of(preview.already_withheld, "part") + " that your own file does not hold either");
    line("When you wrote",
         "the time of each save, from " + day(preview.first_recorded) + " to " + day(preview.last_recorded));
    line("The rest of the garage", preview.other_subjects == 0
                                       ? "nothing"
                                       : "that it holds " + std::to_string(preview.other_subjects) +
                                             " more (other bikes, the garage itself), and which of them "
                                             "changed between two fingerprints; "
                                             "nothing else");
    if (preview.fingerprints > 0)
        line("Fingerprints", count_of(preview.fingerprints, "fingerprint") +
                                 ": when printed, and how many records the garage had then");
    return facts;
}

} // namespace

Document hand_over_preview_text(const HandOverPreview& preview, const Withheld& withheld) {
    Document text;
    text.heading("Handing over " + preview.bike);
    text.facts({{{"Goes along",
                  count_of(preview.entries, "record") +
                      (preview.attachments > 0 ? ", " + count_of(preview.attachments, "attachment") : "")},
                 {"Left out", left_out_words(withheld)}}});
    text.heading("What whoever gets it can see", 3);
    return text.facts(still_shows(preview, withheld));
}

Document handed_over_text(const HandOverPreview& preview, const HandedOver& file) {
    Document text;
    text.sentence(written_words(file.written), document::Severity::good);
    if (!file.fingerprint) {
        return text.sentence(
            "No fingerprint is recorded in this garage, so nobody can hold the file against one. "
            "Print one, and hand over again: sumpbook fingerprint",
            document::Severity::caution);
    }
    text.facts({{{"Fingerprint", store::fingerprint_text(file.fingerprint->fingerprint())},
                 {"Printed", iso_text(file.fingerprint->printed)}}});
    const auto verify = "sumpbook -g " + typed_name(file.written.path) + " verify FINGERPRINT";
    text.sentence(
        "The file lines up with this fingerprint of your garage, with the parts left out as with them. "
        "Give it along on paper; whoever gets the file tests it with: " +
        verify);
    if (preview.entries_not_covered > 0)
        text.sentence("It does not cover " + count_of(preview.entries_not_covered, "record") +
                          " written since. Print a new one and hand over again to cover everything.",
                      document::Severity::caution);
    return text;
}

document::Value handed_over_json(const HandOverPreview& preview, const Withheld& withheld,
                                 const HandedOver& file) {
    document::Object json = document::result();
    json.add("bike", preview.bike).add("records", preview.entries).add("attachments", preview.attachments);
    json.add("without_money", withheld.money).add("without_private", withheld.personal);
    json.add("without_attachments", withheld.attachments);
    json.add("records_with_money", preview.entries_with_money);
    json.add("records_with_private", preview.entries_with_private);
    json.add("attachments_left_out", preview.attachments_withheld)
        .add("left_out_before", preview.already_withheld);
    json.add("other_subjects", preview.other_subjects)
        .add("records_not_covered", preview.entries_not_covered);
    const auto& print = file.fingerprint;
    json.add("fingerprint",
             print ? document::Value(store::fingerprint_text(print->fingerprint())) : document::Value());
    json.add("sha256", print ? document::Value(store::hex_text(print->fingerprint())) : document::Value());
    json.add("printed", print ? document::Value(iso_text(print->printed)) : document::Value());
    return json.add("written", written_json(file.written));
}

} // namespace sumpbook::compose
