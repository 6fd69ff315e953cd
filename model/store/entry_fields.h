// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/entry.h"
#include "model/store/part_archive.h"

namespace sumpbook::store {

// Body format 1 of entries: the fields in the order they are written. Every function names all members of
// its struct, so that a new one does not compile until it has its place here; that is a new body format
// once files of this one are in owners' hands.

template <>
inline constexpr int last_of<Evidence> = 4;
template <>
inline constexpr int last_of<DoneBy> = 1;
template <>
inline constexpr int last_of<CheckOutcome> = 2;
template <>
inline constexpr int last_of<ValueState> = 3;
template <>
inline constexpr int last_of<LabFlag> = 2;
template <>
inline constexpr int last_of<OilUse> = 1;
template <>
inline constexpr int last_of<TopUpSide> = 1;
template <>
inline constexpr int last_of<FaultStatus> = 2;
template <>
inline constexpr int last_of<RecallType> = 1;
template <>
inline constexpr int last_of<Applies> = 2;

template <class Archive>
void serialize(Archive& ar, ImportedFrom& imported, unsigned /*version*/) {
    auto& [file, date] = imported;
    ar& file& date;
}
template <class Archive>
void serialize(Archive& ar, AttachmentRef& reference, unsigned /*version*/) {
    auto& [name, media_type, size_bytes, hash] = reference;
    ar& name& media_type& size_bytes& hash;
}
template <class Archive>
void serialize(Archive& ar, ClockChange& change, unsigned /*version*/) {
    auto& [old_last, new_first] = change;
    ar& old_last& new_first;
}
template <class Archive>
void serialize(Archive& ar, CheckDone& check, unsigned /*version*/) {
    auto& [name, outcome, reading] = check;
    ar& name& outcome& reading;
}
template <class Archive>
void serialize(Archive& ar, PartUsed& part, unsigned /*version*/) {
    auto& [name, number, quantity, price, replaces_number] = part;
    ar& name& number& quantity& money(price) & replaces_number;
}
template <class Archive>
void serialize(Archive& ar, TorqueApplied& applied, unsigned /*version*/) {
    auto& [fastener, torque, paint_mark] = applied;
    ar& fastener& torque& paint_mark;
}
template <class Archive>
void serialize(Archive& ar, PaintMarkSeen& seen, unsigned /*version*/) {
    auto& [fastener, still_aligned] = seen;
    ar& fastener& still_aligned;
}
template <class Archive>
void serialize(Archive& ar, SampleValue& value, unsigned /*version*/) {
    auto& [quantity, state, number, unit, method] = value;
    ar& quantity& state& number& unit& method;
}

template <class Archive>
void serialize(Archive& ar, Reading& reading, unsigned /*version*/) {
    auto& [clock_change] = reading;
    ar& clock_change;
}
template <class Archive>
void serialize(Archive& ar, Fuel& fuel, unsigned /*version*/) {
    auto& [volume, price, full, missed_before, octane, trip] = fuel;
    ar& volume& money(price) & full& missed_before& octane& trip;
}
template <class Archive>
void serialize(Archive& ar, OilChange& change, unsigned /*version*/) {
    auto& [compartment, oil_name, sae_grade, jaso_class, jaso_edition, volume_in, volume_drained,
           filter_changed, filter_number, level_after, virgin_sample] = change;
    ar& compartment& oil_name& sae_grade& jaso_class& jaso_edition& volume_in& volume_drained;
    ar& filter_changed& filter_number& level_after& virgin_sample;
}
template <class Archive>
void serialize(Archive& ar, TopUp& top_up, unsigned /*version*/) {
    auto& [compartment, volume, level_before, level_after, same_oil] = top_up;
    ar& compartment& volume& level_before& level_after& same_oil;
}
template <class Archive>
void serialize(Archive& ar, Work& work, unsigned /*version*/) {
    auto& [text, checks, parts, labour_hours, labour_price, done_by, planned, torques, paint_marks_seen] =
        work;
    ar& text& checks& mixed(parts) & labour_hours& money(labour_price) & done_by& planned;
    ar& torques& paint_marks_seen;
}
template <class Archive>
void serialize(Archive& ar, Fit& fit, unsigned /*version*/) {
    auto& [slot, maker, number, serial, tyre_date_code, distance_before, hours_before] = fit;
    ar& slot& maker& number& serial& tyre_date_code& distance_before& hours_before;
}
template <class Archive>
void serialize(Archive& ar, Modification& modification, unsigned /*version*/) {
    auto& [what, reversible, original_parts_kept, approval_paper, setting_before, setting_after] =
        modification;
    ar& what& reversible& original_parts_kept& approval_paper& setting_before& setting_after;
}
template <class Archive>
void serialize(Archive& ar, Measure& measure, unsigned /*version*/) {
    auto& [quantity, value, unit, at, limit] = measure;
    ar& quantity& value& unit& at& limit;
}
template <class Archive>
void serialize(Archive& ar, Sample& sample, unsigned /*version*/) {
    auto& [use, laboratory, number, sent, result, compartment, oil_name, oil_change_date, distance_on_oil,
           hours_on_oil, drawn, values, flag, flag_words, remark] = sample;
    ar& use& personal(laboratory) & number& sent& result& compartment& oil_name& oil_change_date;
    ar& distance_on_oil& hours_on_oil& drawn& values& flag& flag_words& remark;
}
template <class Archive>
void serialize(Archive& ar, Fault& fault, unsigned /*version*/) {
    auto& [code, text, count, status, cleared] = fault;
    ar& code& text& count& status& cleared;
}
template <class Archive>
void serialize(Archive& ar, Recall& recall, unsigned /*version*/) {
    auto& [type, number, text, applies, done, how, recurring, next_due] = recall;
    ar& type& number& text& applies& done& how& recurring& next_due;
}
template <class Archive>
void serialize(Archive& ar, Cost& cost, unsigned /*version*/) {
    auto& [category, text, covers_from, covers_until, every_months, until, valuation] = cost;
    ar& category& text& covers_from& covers_until& every_months& until& valuation;
}
template <class Archive>
void serialize(Archive& ar, Layup& layup, unsigned /*version*/) {
    auto& [until, planned] = layup;
    ar& until& planned;
}
template <class Archive>
void serialize(Archive& /*ar*/, Note& /*note*/, unsigned /*version*/) {}
template <class Archive>
void serialize(Archive& ar, Attach& attach, unsigned /*version*/) {
    auto& [text] = attach;
    ar& text;
}

template <class Archive>
void serialize(Archive& ar, Entry& entry, unsigned /*version*/) {
    auto& [date, odometer, hours, note, place, who, evidence, visit, does, paid, imported, attachments,
           doubts, body] = entry;
    ar& date& odometer& hours& personal(note) & personal(place) & personal(who) & evidence& visit& does;
    ar& money(paid) & imported& personal(attachments) & Doubts{doubts} & mixed(body);
}

} // namespace sumpbook::store
