// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/import/entry_text.h"

#include "model/garage/slugs.h"

#include <fmt/format.h>

namespace sumpbook::import {
namespace {

/// Collects "name value" pieces; absent values leave no trace.
class Pieces {
public:
    explicit Pieces(std::string start)
        : text_(std::move(start)) {}
    void add(std::string_view name, const std::optional<std::string>& value) {
        if (value && !value->empty()) put(fmt::format("{} {}", name, *value));
    }
    void add(std::string_view name, const std::optional<Decimal>& value) {
        if (value) put(fmt::format("{} {}", name, value->text()));
    }
    template <class Unit>
    void add(std::string_view name, const std::optional<Written<Unit>>& value) {
        if (value) put(fmt::format("{} {}", name, text_of(*value)));
    }
    void add(std::string_view name, const std::optional<Date>& value) {
        if (value) put(fmt::format("{} {}", name, iso_text(*value)));
    }
    void add(std::string_view name, const std::optional<Money>& value) {
        if (value) put(fmt::format("{} {}", name, text_of(*value)));
    }
    void add(std::string_view name, const std::optional<std::uint32_t>& value) {
        if (value) put(fmt::format("{} {}", name, *value));
    }
    void add(std::string_view name, const std::optional<bool>& value) {
        if (value) put(fmt::format("{} {}", name, *value ? "yes" : "no"));
    }
    template <class Enum>
    requires std::is_enum_v<Enum>
    void add(std::string_view name, const std::optional<Enum>& value) {
        if (value) put(fmt::format("{} {}", name, slug(*value)));
    }
    void put(std::string_view piece) {
        if (!piece.empty()) text_ += ", " + std::string(piece);
    }
    [[nodiscard]] std::string take() { return std::move(text_); }

private:
    std::string text_;
};

void describe(Pieces& pieces, const Reading& reading) {
    if (!reading.clock_change) return;
    pieces.put(fmt::format("clock changed from {} to {}", text_of(reading.clock_change->old_last),
                           text_of(reading.clock_change->new_first)));
}

void describe(Pieces& pieces, const Fuel& fuel) {
    pieces.add("volume", fuel.volume);
    pieces.put(fuel.full ? "full" : "part");
    if (fuel.missed_before) pieces.put("one before missed");
    if (fuel.price)
        pieces.put(fmt::format("price {} {} per {}", fuel.price->amount.text(), fuel.price->currency.code(),
                               symbol(fuel.price->per)));
    pieces.add("octane", fuel.octane);
    pieces.add("trip", fuel.trip);
}

void describe(Pieces& pieces, const OilChange& change) {
    pieces.put(change.compartment);
    pieces.add("oil", change.oil_name);
    pieces.add("grade", change.sae_grade);
    pieces.add("JASO", change.jaso_class);
    pieces.add("edition", change.jaso_edition);
    pieces.add("in", change.volume_in);
    pieces.add("drained", change.volume_drained);
    pieces.add("filter changed", change.filter_changed);
    pieces.add("filter number", change.filter_number);
    pieces.add("level after", change.level_after);
    pieces.add("virgin sample", change.virgin_sample);
}

void describe(Pieces& pieces, const TopUp& top_up) {
    pieces.put(top_up.compartment);
    pieces.add("volume", top_up.volume);
    pieces.add("level before", top_up.level_before);
    pieces.add("level after", top_up.level_after);
    pieces.add("same oil", top_up.same_oil);
}

std::string text_of_part(const PartUsed& part) {
    std::string text = "part " + part.name;
    if (part.quantity) text += " x " + part.quantity->text();
    if (part.number) text += " [" + *part.number + "]";
    if (part.replaces_number) text += " replaces [" + *part.replaces_number + "]";
    if (part.price) text += " = " + text_of(*part.price);
    return text;
}

void describe(Pieces& pieces, const Work& work) {
    pieces.add("text", work.text);
    for (const auto& check : work.checks)
        pieces.put(
            fmt::format("check {}: {} {}", check.name, slug(check.outcome), check.reading.value_or("")));
    for (const auto& part : work.parts)
        pieces.put(text_of_part(part));
    pieces.add("labour hours", work.labour_hours);
    pieces.add("labour", work.labour_price);
    pieces.add("by", work.done_by);
    if (work.planned) pieces.put("planned");
    for (const auto& torque : work.torques)
        pieces.put(fmt::format("torque {} {}{}", torque.fastener, text_of(torque.torque),
                               !torque.paint_mark   ? ""
                               : *torque.paint_mark ? " painted"
                                                    : " not painted"));
    for (const auto& mark : work.paint_marks_seen)
        pieces.put(fmt::format("paint mark {} {}", mark.fastener, mark.still_aligned ? "aligned" : "moved"));
}

void describe(Pieces& pieces, const Fit& fit) {
    pieces.put(fit.slot);
    pieces.add("maker", fit.maker);
    pieces.add("number", fit.number);
    pieces.add("serial", fit.serial);
    pieces.add("tyre code", fit.tyre_date_code);
    pieces.add("distance before", fit.distance_before);
    pieces.add("hours before", fit.hours_before);
}

void describe(Pieces& pieces, const Modification& change) {
    pieces.put(change.what);
    pieces.add("reversible", change.reversible);
    pieces.add("original parts kept", change.original_parts_kept);
    pieces.add("paper", change.approval_paper);
    pieces.add("before", change.setting_before);
    pieces.add("after", change.setting_after);
}

void describe(Pieces& pieces, const Measure& measure) {
    pieces.put(measure.quantity);
    pieces.add("value", measure.value);
    pieces.put(measure.unit);
    pieces.add("at", measure.at);
    pieces.add("limit", measure.limit);
}

std::string text_of_value(const SampleValue& value) {
    switch (value.state) {
    case ValueState::measured:
        return value.number.text() + " " + value.unit;
    case ValueState::below:
        return "<" + value.number.text() + " " + value.unit;
    case ValueState::detected:
        return "detected";
    case ValueState::not_detected:
        return "not detected";
    }
    return {};
}

void describe(Pieces& pieces, const Sample& sample) {
    pieces.put(slug(sample.use));
    pieces.put(sample.compartment);
    pieces.add("laboratory", sample.laboratory);
    pieces.add("number", sample.number);
    pieces.add("sent", sample.sent);
    pieces.add("result", sample.result);
    pieces.add("oil", sample.oil_name);
    pieces.add("oil change", sample.oil_change_date);
    pieces.add("distance on oil", sample.distance_on_oil);
    pieces.add("hours on oil", sample.hours_on_oil);
    pieces.add("drawn", sample.drawn);
    for (const auto& value : sample.values)
        pieces.put(fmt::format("{} {}{}", value.quantity, text_of_value(value),
                               value.method ? " by " + *value.method : ""));
    pieces.add("flag", sample.flag);
    pieces.add("words", sample.flag_words);
    pieces.add("remark", sample.remark);
}

void describe(Pieces& pieces, const Fault& fault) {
    pieces.put(fault.code);
    pieces.add("text", fault.text);
    pieces.add("count", fault.count);
    pieces.add("status", fault.status);
    pieces.add("cleared", fault.cleared);
}

void describe(Pieces& pieces, const Recall& recall) {
    pieces.put(fmt::format("{} {}", slug(recall.type), recall.number));
    pieces.add("text", recall.text);
    pieces.put(fmt::format("applies {}", slug(recall.applies)));
    pieces.put(recall.done ? "done" : "open");
    pieces.add("how", recall.how);
    if (recall.recurring) pieces.put("recurring");
    pieces.add("next due", recall.next_due);
}

void describe(Pieces& pieces, const Cost& cost) {
    pieces.put(cost.category);
    pieces.add("text", cost.text);
    pieces.add("covers from", cost.covers_from);
    pieces.add("covers until", cost.covers_until);
    pieces.add("every months", cost.every_months);
    pieces.add("until", cost.until);
    if (cost.valuation) pieces.put("valuation");
}

void describe(Pieces& pieces, const Layup& layup) {
    pieces.add("until", layup.until);
    if (layup.planned) pieces.put("planned");
}

void describe(Pieces& /*pieces*/, const Note& /*note*/) {}

void describe(Pieces& pieces, const Attach& attach) { pieces.add("text", attach.text); }

} // namespace

std::string entry_text(const Entry& entry) {
    Pieces pieces(fmt::format("{} {}", iso_text(entry.date), kind_slug(entry.body)));
    pieces.add("odometer", entry.odometer);
    pieces.add("hours", entry.hours);
    std::visit([&pieces](const auto& body) { describe(pieces, body); }, entry.body);
    for (const auto& item : entry.does)
        pieces.put("does " + item);
    pieces.add("paid", entry.paid);
    pieces.add("note", entry.note);
    pieces.add("place", entry.place);
    pieces.add("who", entry.who);
    pieces.add("evidence", entry.evidence);
    pieces.add("visit", entry.visit);
    return pieces.take();
}

} // namespace sumpbook::import
