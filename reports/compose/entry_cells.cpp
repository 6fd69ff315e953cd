// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/entry_cells.h"

#include "model/garage/slugs.h"
#include "reports/compose/entry_words.h"
#include "reports/compose/words.h"

#include <utility>

namespace sumpbook::compose {
namespace {

class Cells {
public:
    Cells& text(const char* heading, const std::string& text) {
        if (!text.empty()) cells_.push_back({heading, text, true});
        return *this;
    }
    Cells& text(const char* heading, const std::optional<std::string>& value) {
        return text(heading, value.value_or(""));
    }
    Cells& exact(const std::string& heading, const std::string& text) {
        cells_.push_back({heading, text, false});
        return *this;
    }
    Cells& number(const char* heading, const std::optional<Decimal>& value) {
        return value ? exact(heading, value->text()) : *this;
    }
    Cells& whole(const char* heading, const std::optional<std::uint32_t>& value) {
        return value ? exact(heading, std::to_string(*value)) : *this;
    }
    template <class Unit>
    Cells& amount(const char* heading, const std::optional<Written<Unit>>& value) {
        return value ? exact(heading, text_of(*value)) : *this;
    }
    Cells& money(const char* heading, const std::optional<Money>& value) {
        return value ? exact(heading, text_of(*value)) : *this;
    }
    Cells& day(const char* heading, const std::optional<Date>& value) {
        return value ? exact(heading, iso_text(*value)) : *this;
    }
    Cells& yes_no(const char* heading, const std::optional<bool>& value) {
        return value ? exact(heading, *value ? "yes" : "no") : *this;
    }
    template <class Enum>
    Cells& word(const char* heading, const std::optional<Enum>& value) {
        return value ? exact(heading, std::string(slug(*value))) : *this;
    }
    template <class T, class ToText>
    Cells& list(const char* heading, const std::vector<T>& things, const ToText& to_text) {
        std::string joined;
        for (const auto& thing : things)
            joined += (joined.empty() ? "" : " | ") + to_text(thing);
        return text(heading, joined);
    }
    [[nodiscard]] std::vector<EntryCell> take() && { return std::move(cells_); }

private:
    std::vector<EntryCell> cells_;
};

std::string check_text(const CheckDone& check) {
    return check.name + ": " + std::string(slug(check.outcome)) + (check.reading ? " " + *check.reading : "");
}

/// "oil filter x 1 [HF-11 replaces HF-9] = 12.90 EUR"
std::string part_text(const PartUsed& part) {
    std::string text = part.name;
    if (part.quantity) text += " x " + part.quantity->text();
    std::string numbers = part.number.value_or("");
    if (part.replaces_number)
        numbers += (numbers.empty() ? "replaces " : " replaces ") + *part.replaces_number;
    if (!numbers.empty()) text += " [" + numbers + "]";
    if (part.price) text += " = " + text_of(*part.price);
    return text;
}

std::string torque_text(const TorqueApplied& torque) {
    std::string text = torque.fastener + " " + text_of(torque.torque);
    if (torque.paint_mark) text += *torque.paint_mark ? " painted" : " not painted";
    return text;
}

std::string seen_text(const PaintMarkSeen& seen) {
    return seen.fastener + (seen.still_aligned ? ": aligned" : ": moved");
}

std::string price_text(const UnitPrice& price) {
    return price.amount.text() + " " + price.currency.code() + "/" + std::string(symbol(price.per));
}

/// "12 mg/kg", "<2 mg/kg", "not detected"; the method stands in the heading
std::string value_text(const SampleValue& value) {
    if (value.state == ValueState::detected) return "detected";
    if (value.state == ValueState::not_detected) return "not detected";
    std::string text = (value.state == ValueState::below ? "<" : "") + value.number.text();
    return value.unit.empty() ? text : text + " " + value.unit;
}

struct CellsOf {
    Cells& to;

    void operator()(const Reading& reading) const {
        if (!reading.clock_change) return;
        to.amount("old last", std::optional(reading.clock_change->old_last));
        to.amount("new first", std::optional(reading.clock_change->new_first));
    }
    void operator()(const Fuel& fuel) const {
        to.amount("volume", fuel.volume).yes_no("full", fuel.full);
        if (fuel.missed_before) to.yes_no("missed", true);
        if (fuel.price) to.exact("price per unit", price_text(*fuel.price));
        to.number("octane", fuel.octane).amount("trip", fuel.trip);
    }
    void operator()(const OilChange& change) const {
        std::optional<std::string> jaso = change.jaso_class;
        if (jaso && change.jaso_edition) *jaso += " " + *change.jaso_edition;
        to.text("compartment", change.compartment).text("oil", change.oil_name);
        to.text("grade", change.sae_grade).text("jaso", jaso).amount("volume in", change.volume_in);
        to.amount("volume drained", change.volume_drained).yes_no("filter changed", change.filter_changed);
        to.text("filter number", change.filter_number).number("level after", change.level_after);
        to.text("virgin sample", change.virgin_sample);
    }
    void operator()(const TopUp& top_up) const {
        to.text("compartment", top_up.compartment).amount("volume", top_up.volume);
        to.number("level before", top_up.level_before).number("level after", top_up.level_after);
        to.yes_no("same oil", top_up.same_oil);
    }
    void operator()(const Work& work) const {
        to.text("text", work.text).list("checks", work.checks, check_text);
        to.list("parts", work.parts, part_text).number("labour hours", work.labour_hours);
        to.money("labour price", work.labour_price).word("done by", work.done_by);
        if (work.planned) to.yes_no("planned", true);
        to.list("torques", work.torques, torque_text);
        to.list("paint marks", work.paint_marks_seen, seen_text);
    }
    void operator()(const Fit& fit) const {
        to.text("slot", fit.slot).text("maker", fit.maker).text("number", fit.number);
        to.text("serial", fit.serial).text("tyre code", fit.tyre_date_code);
        to.amount("distance before", fit.distance_before).number("hours before", fit.hours_before);
    }
    void operator()(const Modification& modification) const {
        to.text("what", modification.what).yes_no("reversible", modification.reversible);
        to.yes_no("original parts kept", modification.original_parts_kept);
        to.text("approval paper", modification.approval_paper);
        to.text("setting before", modification.setting_before);
        to.text("setting after", modification.setting_after);
    }
    void operator()(const Measure& measure) const {
        to.text("quantity", measure.quantity).number("value", measure.value).text("unit", measure.unit);
        to.text("at", measure.at).number("limit", measure.limit);
    }
    void operator()(const Sample& sample) const {
        to.word("use", std::optional(sample.use)).text("laboratory", sample.laboratory);
        to.text("sample number", sample.number).day("sent", sample.sent).day("result date", sample.result);
        to.text("compartment", sample.compartment).text("oil", sample.oil_name);
        to.day("oil change date", sample.oil_change_date);
        to.amount("distance on oil", sample.distance_on_oil).number("hours on oil", sample.hours_on_oil);
        to.word("drawn", sample.drawn);
        for (const auto& value : sample.values)
            to.exact(value.quantity + (value.method ? " (" + *value.method + ")" : ""), value_text(value));
        to.word("flag", sample.flag).text("flag words", sample.flag_words).text("remark", sample.remark);
    }
    void operator()(const Fault& fault) const {
        to.text("code", fault.code).text("text", fault.text).whole("count", fault.count);
        to.word("status", fault.status).yes_no("cleared", fault.cleared);
    }
    void operator()(const Recall& recall) const {
        to.word("type", std::optional(recall.type)).text("number", recall.number);
        to.text("text", recall.text).word("applies", std::optional(recall.applies));
        to.yes_no("done", recall.done).text("how", recall.how);
        if (recall.recurring) to.yes_no("recurring", true);
        to.day("next due", recall.next_due);
    }
    void operator()(const Cost& cost) const {
        to.text("category", cost.category).text("text", cost.text).day("covers from", cost.covers_from);
        to.day("covers until", cost.covers_until).whole("every", cost.every_months);
        to.day("until", cost.until);
        if (cost.valuation) to.yes_no("valuation", true);
    }
    void operator()(const Layup& layup) const {
        to.day("until", layup.until);
        if (layup.planned) to.yes_no("planned", true);
    }
    void operator()(const Note& /*note*/) const {}
    void operator()(const Attach& attach) const { to.text("text", attach.text); }
};

std::string label_of(const std::string& heading) {
    if (heading.size() <= 2 || heading == "pq") return heading; // chemical symbols stay as they are
    std::string label = heading;
    if (label[0] >= 'a' && label[0] <= 'z') label[0] = static_cast<char>(label[0] - 'a' + 'A');
    return label;
}

/// "87082 km" -> "87 082 km"; a number without a unit, a day or a word as it is.
std::string with_groups(const std::string& text) {
    const auto blank = text.find(' ');
    if (blank == std::string::npos) return text;
    const auto number = Decimal::parse(std::string_view(text).substr(0, blank));
    return number ? grouped(*number) + text.substr(blank) : text;
}

} // namespace

std::vector<EntryCell> entry_cells(const Entry& entry) {
    Cells cells;
    cells.day("date", entry.date).amount("odometer", entry.odometer).number("hours", entry.hours);
    std::visit(CellsOf{cells}, entry.body);
    cells.list("does", entry.does, [](const std::string& slug) { return slug; });
    cells.money(std::holds_alternative<Cost>(entry.body) ? "amount" : "total", entry.paid);
    cells.text("note", entry.note).text("place", entry.place).text("who", entry.who);
    cells.word("evidence", entry.evidence).text("visit", entry.visit);
    return std::move(cells).take();
}

document::Facts entry_facts(const Entry& entry) {
    document::Facts facts;
    for (auto& cell : entry_cells(entry))
        facts.lines.emplace_back(label_of(cell.heading),
                                 cell.is_text ? std::move(cell.text) : with_groups(cell.text));
    return facts;
}

} // namespace sumpbook::compose
