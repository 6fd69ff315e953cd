// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/import/entry_rows.h"

#include "model/import/words.h"

namespace sumpbook::import {
namespace {

/// The laboratory's flag: one word of the ladder, or "watch: MONITOR" with the laboratory's own words behind.
void read_flag(RowReader& reader, Sample& sample) {
    reader.use("flag");
    sample.flag_words = reader.text("flag words");
    const auto typed = reader.cell("flag");
    if (typed.empty()) return;
    const std::size_t colon = std::min(typed.find(':'), typed.size());
    const auto word = value_of_word("lab-flag", typed.substr(0, colon));
    if (!word) {
        reader.doubt("flag", "within, watch or act, with the laboratory's own words behind a colon");
        return;
    }
    sample.flag = from_slug<LabFlag>(*word).value();
    const auto own_words = colon < typed.size() ? trimmed(typed.substr(colon + 1)) : std::string_view();
    if (own_words.empty()) return;
    if (sample.flag_words)
        reader.doubt("flag", "the laboratory's words in one column only");
    else
        sample.flag_words = std::string(own_words);
}

void read_values(RowReader& reader, Sample& sample) {
    for (const auto& field : fields_of(ImportKind::samples)) {
        if (field.type != FieldType::quantity) continue;
        if (auto value = reader.sample_value(field.slug)) sample.values.push_back(std::move(*value));
    }
}

} // namespace

RowVerdict read_sample(RowReader& reader, Entry& entry) {
    Sample sample;
    sample.use = reader.choice<OilUse>("use", "oil-use").value_or(OilUse::used);
    sample.laboratory = reader.text("laboratory");
    sample.number = reader.text("sample number");
    sample.sent = reader.date("sent");
    sample.result = reader.date("result date");
    sample.compartment = reader.text("compartment").value_or("engine");
    sample.oil_name = reader.text("oil");
    sample.oil_change_date = reader.date("oil change date");
    sample.distance_on_oil = reader.distance("distance on oil");
    sample.hours_on_oil = reader.number_from_zero("hours on oil");
    sample.drawn = reader.choice<TopUpSide>("drawn", "top-up-side");
    read_values(reader, sample);
    read_flag(reader, sample);
    sample.remark = reader.text("remark");
    entry.body = std::move(sample);
    return {};
}

} // namespace sumpbook::import
