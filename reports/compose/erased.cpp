// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/erased.h"

#include <algorithm>

namespace sumpbook::compose {
namespace {

using document::Array;
using document::Document;
using document::Object;
using document::Value;

std::string day_of(const RecordedTime& time) {
    return spelled_text(parse_iso_date(iso_text(time).substr(0, 10)).value());
}

std::optional<std::string> reason_of(const store::ErasedRecord& erased) {
    const auto* withdrawal = erased.by == nullptr ? nullptr : std::get_if<Withdrawal>(&erased.by->record.content);
    return withdrawal == nullptr ? std::nullopt : withdrawal->reason;
}

Object object_of(const store::ErasedRecord& erased) {
    Object object;
    object.add("id", erased.id).add("erased", erased.for_itself);
    object.add("erased_recorded",
               erased.for_itself ? Value(iso_text(erased.by->record.recorded)) : Value());
    object.add("reason", erased.for_itself ? Value(reason_of(erased)) : Value());
    object.add("withdrawal", erased.for_itself ? Value(erased.by->id) : Value());
    object.add("recorded_again_as",
               !erased.for_itself && erased.by != nullptr ? Value(erased.by->id) : Value());
    return object;
}

} // namespace

std::vector<store::ErasedRecord> erased_of(const std::vector<const Bike*>& bikes,
                                           const std::vector<store::ErasedRecord>& all) {
    std::vector<store::ErasedRecord> chosen;
    std::ranges::copy_if(all, std::back_inserter(chosen), [&](const store::ErasedRecord& erased) {
        return erased.for_itself && std::ranges::find(bikes, erased.subject, &Bike::id) != bikes.end();
    });
    return chosen;
}

std::string erased_sentence(const std::vector<store::ErasedRecord>& erased) {
    std::string text;
    for (const auto& one : erased) {
        text += (text.empty() ? "Erased: " : "; ") + one.id + " on " + day_of(one.by->record.recorded);
        if (const auto reason = reason_of(one)) text += ", " + *reason;
    }
    return text.empty() ? text : text + ".";
}

Array erased_json(const std::vector<store::ErasedRecord>& erased) {
    Array items;
    for (const auto& one : erased)
        items.emplace_back(object_of(one));
    return items;
}

Value erased_page_json(const store::ErasedRecord& erased) {
    Object object = document::result();
    object.add("entry", nullptr).add("erased", object_of(erased));
    return object;
}

Document erased_page_text(const store::ErasedRecord& erased) {
    Document text;
    text.heading(erased.id + (erased.for_itself ? ", erased" : ", not held here any more"));
    if (erased.for_itself) {
        text.facts({{{"Erased", day_of(erased.by->record.recorded)},
                     {"Why", reason_of(erased).value_or("no reason is held in this file")},
                     {"Recorded as", erased.by->id}}});
        return text.sentence("What it said is not in this file. Its hash is, so fingerprints printed before "
                             "still verify. Other copies of the file may still hold it.");
    }
    if (erased.by == nullptr)
        return text.sentence("What it said is not in this file, and nothing here says why. Another copy may "
                             "hold it.");
    return text.sentence("It was saved together with an entry that was erased, and recorded again as " +
                         erased.by->id + ". See: sumpbook log show " + erased.by->id);
}

std::string recorded_again_sentence(const RecordedTime& erased) {
    return "Copied because another entry of the same save was erased on " + day_of(erased) +
           "; the time recorded is that of the first time.";
}

} // namespace sumpbook::compose
