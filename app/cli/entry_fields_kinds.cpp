// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/entry_fields_build.h"
#include "app/cli/entry_fields_lists.h"
#include "app/cli/suggestions.h"
#include "model/import/value_words.h"

#include <algorithm>

namespace sumpbook::cli {
namespace {

using Fields = std::vector<EntryField>;

Result<CheckDone> read_check(const std::string& option, const std::string& text, const EntryTypedAs& /*as*/) {
    return typed_check(option, text);
}

Result<PaintMarkSeen> read_seen(const std::string& option, const std::string& text,
                                const EntryTypedAs& /*as*/) {
    return typed_paint_mark(option, text);
}

Result<Money> read_money(const std::string& option, const std::string& text, const EntryTypedAs& as) {
    return typed_money(option, text, as);
}

/// A cost can be money back.
Result<Money> read_any_money(const std::string& option, const std::string& text, const EntryTypedAs& as) {
    return typed_money(option, text, as, true);
}

Result<std::string> read_category(const std::string& option, const std::string& text,
                                  const EntryTypedAs& as) {
    const auto known = [&](const std::string& word) {
        return std::ranges::find(as.categories, word) != as.categories.end();
    };
    if (known(text)) return text;
    if (const auto twin = import::value_of_word("category", text); twin && known(*twin)) return *twin;
    std::string list;
    for (const auto& category : as.categories)
        list += (list.empty() ? "" : ", ") + category;
    return refuse("There is no category \"" + text + "\"." + did_you_mean(text, as.categories) +
                      " The categories are: " + list + ".",
                  {.file = {}, .line = {}, .column = option, .text = text});
}

Fields reading_fields() {
    return {field("--clock-change", "OLD to NEW",
                  "The dial was changed: its last reading and the first of the new one, \"48210 km to 0 km\"",
                  &Reading::clock_change, &typed_clock_change)};
}

/// "--part" is "--full no" in one word.
EntryField part_fill() {
    EntryField made = yes_no("--part", "Not filled up to the usual mark", &Fuel::full);
    const auto set_full = made.set;
    made.set = [set_full](Entry& entry, const std::vector<std::string>& texts,
                          const EntryTypedAs& as) -> Result<void> {
        if (auto set = set_full(entry, texts, as); !set) return set;
        auto& fuel = std::get<Fuel>(entry.body);
        fuel.full = !fuel.full;
        return {};
    };
    return made;
}

Fields fuel_fields() {
    return {field("--volume", "VOLUME", "How much went in: \"12.3 L\", \"2.7 imp gal\"", &Fuel::volume,
                  &typed_volume),
            field("--price", "PRICE", "Of one unit, as on the pump: \"1.859 EUR/L\"", &Fuel::price,
                  &typed_unit_price),
            yes_no("--full", "Filled to the usual mark (what is meant when nothing is said)", &Fuel::full),
            part_fill(),
            yes_no("--missed", "At least one stop before this one was not recorded", &Fuel::missed_before),
            field("--octane", "NUMBER", "Of the fuel", &Fuel::octane, &typed_amount_of_something),
            field("--trip", "DISTANCE", "The trip meter, where there is no odometer", &Fuel::trip,
                  &typed_distance)};
}

Fields oil_change_fields() {
    return {
        field("--compartment", "NAME",
              "engine (what is meant when nothing is said), gearbox, primary, final-drive, ...",
              &OilChange::compartment, &read_words),
        field("--oil", "TEXT", "Name of the oil", &OilChange::oil_name, &read_words),
        field("--grade", "GRADE", "SAE grade: 10W-40", &OilChange::sae_grade, &read_words),
        field("--jaso", "CLASS", "JASO class on the can: MA2", &OilChange::jaso_class, &read_words),
        field("--jaso-edition", "YEAR", "Edition of the JASO standard the class is of",
              &OilChange::jaso_edition, &read_words),
        field("--volume-in", "VOLUME", "What was filled in: \"2.9 L\"", &OilChange::volume_in, &typed_volume),
        field("--volume-drained", "VOLUME", "What was drained", &OilChange::volume_drained, &typed_volume),
        yes_no("--filter-changed", "A new filter was fitted", &OilChange::filter_changed),
        field("--filter-number", "TEXT", "Part number of the filter", &OilChange::filter_number, &read_words),
        field("--level-after", "FRACTION", "Level afterwards: 0 lower mark, 1 upper mark",
              &OilChange::level_after, &read_level),
        field("--virgin-sample", "NUMBER", "Sample number of the new oil's own sample",
              &OilChange::virgin_sample, &read_words)};
}

Fields top_up_fields() {
    return {field("--compartment", "NAME",
                  "engine (what is meant when nothing is said), gearbox, coolant, ...", &TopUp::compartment,
                  &read_words),
            field("--volume", "VOLUME", "What was added: \"0.2 L\"", &TopUp::volume, &typed_volume),
            field("--level-before", "FRACTION", "Level before: 0 lower mark, 1 upper mark",
                  &TopUp::level_before, &read_level),
            field("--level-after", "FRACTION", "Level afterwards", &TopUp::level_after, &read_level),
            yes_no("--same-oil", "The oil is the one already in", &TopUp::same_oil)};
}

Fields work_fields() {
    return {
        field("--text", "TEXT", "What was done", &Work::text, &read_words),
        field("--check", "CHECK", "\"chain slack: adjusted, 30 mm\"; repeat for each", &Work::checks,
              &read_check),
        field("--part", "PART", "\"oil filter x1 [HF-11] 12.90\"; repeat for each", &Work::parts,
              &typed_part),
        field("--torque", "TORQUE", "\"oil drain plug 24 Nm painted\"; repeat for each", &Work::torques,
              &typed_torque),
        field("--paint-mark", "SEEN", "\"axle nut aligned\", or moved; repeat for each",
              &Work::paint_marks_seen, &read_seen),
        field("--labour-hours", "HOURS", "Hours of labour", &Work::labour_hours, &typed_amount_of_something),
        field("--labour-price", "AMOUNT", "What the labour cost", &Work::labour_price, &read_money),
        field("--done-by", "self|workshop", "Who did it", &Work::done_by, &read_word<DoneBy>),
        yes_no("--planned", "Planned work, not a repair", &Work::planned)};
}

Fields fit_fields() {
    return {
        field("--slot", "SLOT",
              "engine, gearbox, front-tyre, rear-tyre, chain-set, battery, front-pads, rear-pads, clutch, or "
              "your own word",
              &Fit::slot, &read_words),
        field("--maker", "TEXT", "Who made it", &Fit::maker, &read_words),
        field("--number", "TEXT", "The maker's number", &Fit::number, &read_words),
        field("--serial", "TEXT", "Its serial number", &Fit::serial, &read_words),
        field("--tyre-code", "WWYY", "Week and year on the tyre's side", &Fit::tyre_date_code, &read_words),
        field("--distance-before", "DISTANCE", "What it had already run", &Fit::distance_before,
              &typed_distance),
        field("--hours-before", "HOURS", "Hours it had already run", &Fit::hours_before,
              &typed_amount_of_something)};
}

Fields modification_fields() {
    return {
        field("--what", "TEXT", "What was changed", &Modification::what, &read_words),
        yes_no("--reversible", "It can be taken back", &Modification::reversible),
        yes_no("--original-parts-kept", "The original parts are there", &Modification::original_parts_kept),
        field("--approval-paper", "TEXT", "Paper that allows it", &Modification::approval_paper, &read_words),
        field("--setting-before", "TEXT", "Engine map, gearing or setting before",
              &Modification::setting_before, &read_words),
        field("--setting-after", "TEXT", "The same afterwards", &Modification::setting_after, &read_words)};
}

/// "3.2 mm": a number and whatever unit the thing is measured in.
EntryField measured_value() {
    EntryField made{"--value", "VALUE", "What was measured, with its unit: \"3.2 mm\"", false, false, {}, {}};
    made.set = [](Entry& entry, const std::vector<std::string>& texts,
                  const EntryTypedAs& as) -> Result<void> {
        const auto split = split_number_and_unit(texts.back(), as.mark);
        if (!split) return pass_on(placed(split.error(), "--value", texts.back()));
        auto& measure = std::get<Measure>(entry.body);
        measure.value = split->number;
        measure.unit = std::string(split->unit);
        return {};
    };
    made.clear = [](Entry& entry) {
        auto& measure = std::get<Measure>(entry.body);
        measure.value.reset();
        measure.unit.clear();
    };
    return made;
}

Fields measure_fields() {
    return {
        field("--quantity", "QUANTITY",
              "pad, tread, chain, valve-clearance, brake-fluid-water, battery, pressure, clutch-free-play, "
              "compression, power, torque, or your own word",
              &Measure::quantity, &read_words),
        measured_value(),
        field("--at", "TEXT", "Where: front, \"cylinder 1 inlet\"", &Measure::at, &read_words),
        field("--limit", "NUMBER", "The limit, in the unit of the value", &Measure::limit, &typed_number)};
}

Fields sample_fields() {
    return {field("--value", "VALUE",
                  "Fe=12, \"Pb=<2\", \"tbn=8.1 mg KOH/g ASTM D2896\", glycol=detected; repeat for each",
                  &Sample::values, &typed_sample_value),
            field("--use", "used|virgin", "Oil from the bike, or new from the can", &Sample::use,
                  &read_word<OilUse>),
            field("--laboratory", "TEXT", "Who analysed it (private)", &Sample::laboratory, &read_words),
            field("--number", "TEXT", "Sample number", &Sample::number, &read_words),
            field("--sent", "DATE", "Day it was sent", &Sample::sent, &read_any_day),
            field("--result-date", "DATE", "Day of the result", &Sample::result, &read_any_day),
            field("--compartment", "NAME", "engine (what is meant when nothing is said), gearbox, ...",
                  &Sample::compartment, &read_words),
            field("--oil", "TEXT", "Name of the oil", &Sample::oil_name, &read_words),
            field("--oil-change-date", "DATE", "Day the oil went in (otherwise the latest change before)",
                  &Sample::oil_change_date, &read_any_day),
            field("--distance-on-oil", "DISTANCE", "Run since the oil went in", &Sample::distance_on_oil,
                  &typed_distance),
            field("--hours-on-oil", "HOURS", "Hours since the oil went in", &Sample::hours_on_oil,
                  &typed_amount_of_something),
            field("--drawn", "before|after", "Before or after a top-up of the same day", &Sample::drawn,
                  &read_word<TopUpSide>),
            field("--flag", "within|watch|act", "The laboratory's own verdict", &Sample::flag,
                  &read_word<LabFlag>),
            field("--flag-words", "TEXT", "The verdict in its own words", &Sample::flag_words, &read_words),
            field("--remark", "TEXT", "The laboratory's remark", &Sample::remark, &read_words)};
}

Fields fault_fields() {
    return {field("--code", "CODE", "The fault code", &Fault::code, &read_words),
            field("--text", "TEXT", "What it stands for", &Fault::text, &read_words),
            field("--count", "NUMBER", "How often it was counted", &Fault::count, &read_count),
            field("--status", "stored|pending|permanent", "How the code stood", &Fault::status,
                  &read_word<FaultStatus>),
            yes_no("--cleared", "It was cleared", &Fault::cleared)};
}

Fields recall_fields() {
    return {field("--type", "recall|bulletin", "What it is", &Recall::type, &read_word<RecallType>),
            field("--number", "TEXT", "Its number", &Recall::number, &read_words),
            field("--text", "TEXT", "What it is about", &Recall::text, &read_words),
            field("--applies", "yes|no|unknown", "Whether it is for this bike", &Recall::applies,
                  &read_word<Applies>),
            yes_no("--done", "It has been done", &Recall::done),
            field("--how", "TEXT", "How it was complied with", &Recall::how, &read_words),
            yes_no("--recurring", "It comes again", &Recall::recurring),
            field("--next-due", "DATE", "When it comes next", &Recall::next_due, &read_any_day)};
}

Fields cost_fields() {
    return {
        field("--category", "CATEGORY", "What it is for: insurance, tax, storage, ...", &Cost::category,
              &read_category),
        field("--amount", "AMOUNT", "22.10, or \"22.10 GBP\"; below 0 for money back", &Entry::paid,
              &read_any_money),
        field("--text", "TEXT", "What it was", &Cost::text, &read_words),
        field("--covers-from", "DATE", "First day it covers", &Cost::covers_from, &read_any_day),
        field("--covers-until", "DATE", "Last day it covers", &Cost::covers_until, &read_any_day),
        field("--every", "MONTHS", "It comes again every so many months", &Cost::every_months, &read_months),
        field("--until", "DATE", "Day it stops coming", &Cost::until, &read_any_day),
        yes_no("--valuation", "What the bike is worth; never counted as spending", &Cost::valuation)};
}

Fields layup_fields() {
    return {field("--until", "DATE", "Last day laid up (otherwise still open)", &Layup::until, &read_any_day),
            yes_no("--planned", "Planned: not begun yet", &Layup::planned)};
}

Fields attach_fields() { return {field("--text", "TEXT", "What the file is", &Attach::text, &read_words)}; }

} // namespace

std::vector<EntryField> own_fields(std::string_view kind) {
    static const std::map<std::string_view, Fields (*)()> makers{
        {"reading", &reading_fields}, {"fuel", &fuel_fields},     {"oil-change", &oil_change_fields},
        {"top-up", &top_up_fields},   {"work", &work_fields},     {"fit", &fit_fields},
        {"measure", &measure_fields}, {"sample", &sample_fields}, {"modification", &modification_fields},
        {"fault", &fault_fields},     {"recall", &recall_fields}, {"cost", &cost_fields},
        {"layup", &layup_fields},     {"attach", &attach_fields}};
    const auto found = makers.find(kind);
    return found == makers.end() ? Fields{} : found->second();
}

} // namespace sumpbook::cli
