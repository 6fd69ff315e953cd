// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/add_command_write.h"

#include "reports/compose/entry_json.h"
#include "reports/compose/entry_words.h"

namespace sumpbook::cli {

TypedAs marks_of(const Session& session) {
    TypedAs as;
    as.mark = session.decimal_mark();
    as.order = session.date_order();
    as.today = session.today();
    return as;
}

Result<void> keep_or_refuse(Session& session, Entry& entry, const std::vector<Objection>& objections,
                            bool keep) {
    if (objections.empty()) return {};
    if (!keep) {
        const auto& first = objections.front();
        return refuse(first.sentence + " Nothing was written. Add --keep to record it as typed.",
                      {.file = {}, .line = {}, .column = first.option, .text = first.text});
    }
    for (const auto& objection : objections) {
        session.remark("Kept as typed: " + objection.sentence);
        if (objection.doubt) entry.doubts.push_back(*objection.doubt);
    }
    return {};
}

void show_written(Session& session, const document::Object& json, const std::string& id,
                  const std::string& sentence) {
    document::Document text;
    if (session.options().plain) {
        text.facts({{{id, sentence}}});
    } else {
        text.sentence(sentence);
    }
    session.show(json, text);
}

Result<ExitStatus> write_entry(Session& session, const Bike& bike, const Entry& entry,
                               const std::vector<RecordName>& replaces, const std::string& verb,
                               const std::vector<store::NewAttachment>& files) {
    // The garage is read again after the write: keep what is said about the bike.
    const std::string name = bike.details.value.name;
    std::vector<Change> changes;
    changes.push_back({bike.id, entry, replaces});
    const auto ids = session.write(std::move(changes), files);
    if (!ids) return pass_on(ids.error());
    document::Object json = document::result();
    json.add("id", ids->front()).add("entry", compose::entry_json(name, entry));
    show_written(session, json, ids->front(),
                 verb + " " + ids->front() + ": " + compose::entry_sentence(entry) + ".");
    return ExitStatus::done;
}

} // namespace sumpbook::cli
