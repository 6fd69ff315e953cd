// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/entry_json.h"

#include "model/garage/slugs.h"
#include "model/quantity/torque.h"
#include "reports/compose/entry_words.h"

#include <vector>

namespace sumpbook::compose {
namespace {

using document::Array;
using document::Object;
using document::Value;

template <class Unit>
Value written(const std::optional<Written<Unit>>& amount) {
    if (!amount) return nullptr;
    Object object;
    object.add("number", amount->number).add("unit", symbol(amount->unit));
    return object;
}

Value km_of(const std::optional<WrittenDistance>& distance) {
    const auto exact = distance ? distance_of(*distance) : Distance();
    return distance && exact ? Value(in_unit(*exact, DistanceUnit::km, 3)) : Value();
}

Value litres_of(const std::optional<WrittenVolume>& volume) {
    const auto exact = volume ? volume_of(*volume) : Volume();
    return volume && exact ? Value(in_unit(*exact, VolumeUnit::l, 4)) : Value();
}

/// "odometer" as written and "odometer_km".
void add_distance(Object& to, const std::string& name, const std::optional<WrittenDistance>& distance) {
    to.add(name, written(distance)).add(name + "_km", km_of(distance));
}

void add_volume(Object& to, const std::string& name, const std::optional<WrittenVolume>& volume) {
    to.add(name, written(volume)).add(name + "_l", litres_of(volume));
}

void add_money(Object& to, const std::string& name, const std::optional<Money>& money) {
    to.add(name + "_minor", money ? Value(money->minor) : Value());
    to.add(name + "_currency", money ? Value(money->currency.code()) : Value());
}

template <class Enum>
Value word(const std::optional<Enum>& value) {
    return value ? Value(slug(*value)) : Value();
}

template <class T, class ToValue>
Array list(const std::vector<T>& things, const ToValue& to_value) {
    Array items;
    for (const auto& thing : things)
        items.emplace_back(to_value(thing));
    return items;
}

Object check_json(const CheckDone& check) {
    Object object;
    object.add("name", check.name).add("outcome", slug(check.outcome)).add("reading", check.reading);
    return object;
}

Object part_json(const PartUsed& part) {
    Object object;
    object.add("name", part.name).add("number", part.number).add("quantity", part.quantity);
    add_money(object, "price", part.price);
    object.add("replaces_number", part.replaces_number);
    return object;
}

Object torque_json(const TorqueApplied& torque) {
    Object object;
    object.add("fastener", torque.fastener).add("torque", written(std::optional(torque.torque)));
    object.add("torque_nm", decimal_from_double(newton_metres_of(torque.torque), 2));
    object.add("paint_mark", torque.paint_mark);
    return object;
}

Object seen_json(const PaintMarkSeen& seen) {
    Object object;
    object.add("fastener", seen.fastener).add("still_aligned", seen.still_aligned);
    return object;
}

Value amount_json(const SampleValue& value) {
    switch (value.state) {
    case ValueState::measured:
        return value.number;
    case ValueState::below:
        return Object().add("below", value.number);
    case ValueState::detected:
        return "detected";
    case ValueState::not_detected:
        break;
    }
    return "not-detected";
}

Object value_json(const SampleValue& value) {
    Object object;
    object.add("quantity", value.quantity).add("value", amount_json(value));
    object.add("unit", value.unit).add("method", value.method);
    return object;
}

Object doubt_json(const Doubt& doubt) {
    Object object;
    object.add("file", doubt.file.empty() ? Value() : Value(doubt.file));
    object.add("line", doubt.line == 0 ? Value() : Value(doubt.line));
    object.add("column", doubt.column).add("text", doubt.text).add("expected", doubt.expected);
    return object;
}

Object attachment_json(const AttachmentRef& file) {
    Object object;
    object.add("name", file.name).add("media_type", file.media_type).add("size_bytes", file.size_bytes);
    return object;
}

Value imported_json(const std::optional<ImportedFrom>& imported) {
    if (!imported) return nullptr;
    return Object().add("file", imported->file).add("date", imported->date);
}

struct FieldsOf {
    Object& to;

    void operator()(const Reading& reading) const {
        Value change;
        if (reading.clock_change) {
            Object object;
            add_distance(object, "old_last", reading.clock_change->old_last);
            add_distance(object, "new_first", reading.clock_change->new_first);
            change = object;
        }
        to.add("clock_change", std::move(change));
    }
    void operator()(const Fuel& fuel) const {
        add_volume(to, "volume", fuel.volume);
        Value price;
        if (fuel.price) {
            price = Object()
                        .add("amount", fuel.price->amount)
                        .add("currency", fuel.price->currency.code())
                        .add("per", symbol(fuel.price->per));
        }
        to.add("price_per_unit", std::move(price)).add("full", fuel.full);
        to.add("missed_before", fuel.missed_before).add("octane", fuel.octane);
        add_distance(to, "trip", fuel.trip);
    }
    void operator()(const OilChange& change) const {
        to.add("compartment", change.compartment).add("oil", change.oil_name);
        to.add("sae_grade", change.sae_grade).add("jaso_class", change.jaso_class);
        to.add("jaso_edition", change.jaso_edition);
        add_volume(to, "volume_in", change.volume_in);
        add_volume(to, "volume_drained", change.volume_drained);
        to.add("filter_changed", change.filter_changed).add("filter_number", change.filter_number);
        to.add("level_after_fraction", change.level_after).add("virgin_sample", change.virgin_sample);
    }
    void operator()(const TopUp& top_up) const {
        to.add("compartment", top_up.compartment);
        add_volume(to, "volume", top_up.volume);
        to.add("level_before_fraction", top_up.level_before).add("level_after_fraction", top_up.level_after);
        to.add("same_oil", top_up.same_oil);
    }
    void operator()(const Work& work) const {
        to.add("text", work.text).add("checks", list(work.checks, check_json));
        to.add("parts", list(work.parts, part_json)).add("labour_hours", work.labour_hours);
        add_money(to, "labour", work.labour_price);
        to.add("done_by", word(work.done_by)).add("planned", work.planned);
        to.add("torques", list(work.torques, torque_json));
        to.add("paint_marks_seen", list(work.paint_marks_seen, seen_json));
    }
    void operator()(const Fit& fit) const {
        to.add("slot", fit.slot).add("maker", fit.maker).add("number", fit.number).add("serial", fit.serial);
        to.add("tyre_date_code", fit.tyre_date_code);
        add_distance(to, "distance_before", fit.distance_before);
        to.add("hours_before", fit.hours_before);
    }
    void operator()(const Modification& modification) const {
        to.add("what", modification.what).add("reversible", modification.reversible);
        to.add("original_parts_kept", modification.original_parts_kept);
        to.add("approval_paper", modification.approval_paper);
        to.add("setting_before", modification.setting_before);
        to.add("setting_after", modification.setting_after);
    }
    void operator()(const Measure& measure) const {
        to.add("quantity", measure.quantity).add("value", measure.value).add("unit", measure.unit);
        to.add("at", measure.at).add("limit", measure.limit);
    }
    void operator()(const Sample& sample) const {
        to.add("use", slug(sample.use)).add("laboratory", sample.laboratory).add("number", sample.number);
        to.add("sent", sample.sent).add("result", sample.result).add("compartment", sample.compartment);
        to.add("oil", sample.oil_name).add("oil_change_date", sample.oil_change_date);
        add_distance(to, "distance_on_oil", sample.distance_on_oil);
        to.add("hours_on_oil", sample.hours_on_oil).add("drawn", word(sample.drawn));
        to.add("values", list(sample.values, value_json)).add("flag", word(sample.flag));
        to.add("flag_words", sample.flag_words).add("remark", sample.remark);
    }
    void operator()(const Fault& fault) const {
        to.add("code", fault.code).add("text", fault.text).add("count", fault.count);
        to.add("status", word(fault.status)).add("cleared", fault.cleared);
    }
    void operator()(const Recall& recall) const {
        to.add("type", slug(recall.type)).add("number", recall.number).add("text", recall.text);
        to.add("applies", slug(recall.applies)).add("done", recall.done).add("how", recall.how);
        to.add("recurring", recall.recurring).add("next_due", recall.next_due);
    }
    void operator()(const Cost& cost) const {
        to.add("category", cost.category).add("text", cost.text).add("covers_from", cost.covers_from);
        to.add("covers_until", cost.covers_until).add("every_months", cost.every_months);
        to.add("until", cost.until).add("valuation", cost.valuation);
    }
    void operator()(const Layup& layup) const { to.add("until", layup.until).add("planned", layup.planned); }
    void operator()(const Note& /*note*/) const {}
    void operator()(const Attach& attach) const { to.add("text", attach.text); }
};

void add_entry(Object& to, const std::string& bike, const Entry& entry) {
    to.add("bike", bike).add("date", entry.date).add("kind", kind_slug(entry.body));
    add_distance(to, "odometer", entry.odometer);
    to.add("hours", entry.hours).add("note", entry.note).add("place", entry.place).add("who", entry.who);
    to.add("evidence", word(entry.evidence)).add("visit", entry.visit);
    to.add("does", list(entry.does, [](const std::string& s) { return s; }));
    const auto cost = cost_of(entry);
    to.add("cost_minor", cost ? Value(cost->minor) : Value());
    to.add("currency", cost ? Value(cost->currency.code()) : Value());
    to.add("cost_as_typed", cost ? Value(entry.paid.has_value()) : Value());
    to.add("imported", imported_json(entry.imported)).add("doubts", list(entry.doubts, doubt_json));
    to.add("attachments", list(entry.attachments, attachment_json));
    std::visit(FieldsOf{to}, entry.body);
}

} // namespace

Object entry_json(const std::string& bike, const Entry& entry) {
    Object object;
    add_entry(object, bike, entry);
    return object;
}

Object log_entry_json(const std::string& bike, const LogEntry& entry) {
    Object object;
    object.add("id", entry.id).add("recorded", iso_text(entry.recorded));
    object.add("earlier_ids", list(entry.earlier_ids, [](const std::string& s) { return s; }));
    object.add("in_conflict", entry.in_conflict());
    add_entry(object, bike, entry.value);
    return object;
}

} // namespace sumpbook::compose
