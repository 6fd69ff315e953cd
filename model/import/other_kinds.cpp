// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/import/entry_rows.h"
#include "model/import/words.h"

#include <fmt/format.h>

#include <array>

namespace sumpbook::import {
namespace {

/// "MA2 2016": the class and, behind a blank, the edition of the standard that defines it.
void read_jaso(RowReader& reader, OilChange& change) {
    const auto typed = reader.text("jaso");
    if (!typed) return;
    const std::size_t blank = std::min(typed->find(' '), typed->size());
    change.jaso_class = typed->substr(0, blank);
    const auto edition = trimmed(std::string_view(*typed).substr(blank));
    if (!edition.empty()) change.jaso_edition = std::string(edition);
}

EntryBody oil_change(RowReader& reader) {
    OilChange change;
    change.compartment = reader.text("compartment").value_or("engine");
    change.oil_name = reader.text("oil");
    change.sae_grade = reader.text("grade");
    read_jaso(reader, change);
    change.volume_in = reader.volume("volume in");
    change.volume_drained = reader.volume("volume drained");
    change.filter_changed = reader.yes_no("filter changed");
    change.filter_number = reader.text("filter number");
    change.level_after = reader.fraction("level after");
    change.virgin_sample = reader.text("virgin sample");
    return change;
}

EntryBody top_up(RowReader& reader) {
    TopUp top_up;
    top_up.compartment = reader.text("compartment").value_or("engine");
    top_up.volume = reader.volume(reader.has("volume in") && !reader.has("volume") ? "volume in" : "volume");
    top_up.level_before = reader.fraction("level before");
    top_up.level_after = reader.fraction("level after");
    top_up.same_oil = reader.yes_no("same oil");
    return top_up;
}

EntryBody fit(RowReader& reader) {
    Fit fit;
    fit.slot = reader.text("slot").value_or("");
    fit.maker = reader.text("maker");
    fit.number = reader.text("number");
    fit.serial = reader.text("serial");
    fit.tyre_date_code = reader.text("tyre code");
    fit.distance_before = reader.distance("distance before");
    fit.hours_before = reader.number_from_zero("hours before");
    if (fit.slot.empty()) reader.doubt("slot", "where it was fitted: engine, front-tyre, chain-set, ...");
    return fit;
}

EntryBody modification(RowReader& reader) {
    Modification change;
    change.what = reader.text("what").value_or("");
    if (change.what.empty()) change.what = reader.text("text").value_or("");
    change.reversible = reader.yes_no("reversible");
    change.original_parts_kept = reader.yes_no("original parts kept");
    change.approval_paper = reader.text("approval paper");
    change.setting_before = reader.text("setting before");
    change.setting_after = reader.text("setting after");
    if (change.what.empty()) reader.doubt("what", "what was changed");
    return change;
}

EntryBody measure(RowReader& reader) {
    Measure measure;
    measure.quantity = reader.text("quantity").value_or("");
    measure.value = reader.number("value");
    measure.unit = reader.text("unit").value_or("");
    measure.at = reader.text("at");
    measure.limit = reader.number("limit");
    if (measure.quantity.empty()) reader.doubt("quantity", "what was measured: pad, tread, chain, ...");
    return measure;
}

EntryBody fault(RowReader& reader) {
    Fault fault;
    fault.code = reader.text("code").value_or("");
    fault.text = reader.text("text");
    fault.count = reader.whole("count");
    fault.status = reader.choice<FaultStatus>("status", "fault-status");
    fault.cleared = reader.yes_no("cleared");
    if (fault.code.empty()) reader.doubt("code", "a fault code");
    return fault;
}

EntryBody recall(RowReader& reader) {
    Recall recall;
    recall.type = reader.choice<RecallType>("type", "recall-type").value_or(RecallType::recall);
    recall.number = reader.text("number").value_or("");
    recall.text = reader.text("text");
    recall.applies = reader.choice<Applies>("applies", "applies").value_or(Applies::unknown);
    recall.done = reader.yes_no("done").value_or(false);
    recall.how = reader.text("how");
    recall.recurring = reader.yes_no("recurring").value_or(false);
    recall.next_due = reader.date("next due");
    if (recall.number.empty()) reader.doubt("number", "the number of the recall or bulletin");
    return recall;
}

EntryBody layup(RowReader& reader) {
    Layup layup;
    layup.until = reader.date("until");
    layup.planned = reader.yes_no("planned").value_or(false);
    return layup;
}

EntryBody note(RowReader& /*reader*/) { return Note{}; }

struct KindReader {
    std::string_view kind;
    EntryBody (*read)(RowReader&);
};

constexpr auto kind_readers = std::to_array<KindReader>({{"oil-change", oil_change},
                                                         {"top-up", top_up},
                                                         {"fit", fit},
                                                         {"modification", modification},
                                                         {"measure", measure},
                                                         {"fault", fault},
                                                         {"recall", recall},
                                                         {"layup", layup},
                                                         {"note", note}});

} // namespace

RowVerdict read_other_kind(RowReader& reader, Entry& entry, std::string_view kind) {
    for (const auto& known : kind_readers)
        if (known.kind == kind) entry.body = known.read(reader);
    const bool has_text = std::holds_alternative<Fault>(entry.body) ||
                          std::holds_alternative<Recall>(entry.body) ||
                          std::holds_alternative<Modification>(entry.body);
    if (!has_text && !entry.note) entry.note = reader.text("text");
    return {};
}

} // namespace sumpbook::import
