// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/entry_words.h"

#include "model/garage/slugs.h"
#include "reports/compose/words.h"

#include <algorithm>
#include <vector>

namespace sumpbook::compose {
namespace {

/// Pieces of a sentence, joined by commas; empty pieces are left out.
class Pieces {
public:
    Pieces& add(const std::string& piece) {
        if (!piece.empty()) text_ += (text_.empty() ? "" : ", ") + piece;
        return *this;
    }
    Pieces& add_if_any(const std::optional<std::string>& piece) { return add(piece.value_or("")); }
    [[nodiscard]] std::string text() && { return std::move(text_); }
    [[nodiscard]] std::string text_or(const char* otherwise) && {
        return text_.empty() ? std::string(otherwise) : std::move(text_);
    }

private:
    std::string text_;
};

std::string after_blank(const std::optional<std::string>& text) { return text ? " " + *text : std::string(); }

std::string compartment_words(const std::string& compartment) {
    return compartment == "engine" ? std::string() : compartment;
}

std::string part_words(const PartUsed& part) {
    std::string text = part.name;
    if (part.quantity && *part.quantity != Decimal{1}) text = grouped(*part.quantity) + " x " + text;
    if (part.number) text += " (" + *part.number + ")";
    return text;
}

std::string check_words(const CheckDone& check) {
    return check.name + " " + std::string(slug(check.outcome)) +
           (check.reading ? " (" + *check.reading + ")" : "");
}

std::string torque_words(const TorqueApplied& torque) {
    const bool painted = torque.paint_mark && *torque.paint_mark;
    return torque.fastener + " " + text_of(torque.torque) + (painted ? ", paint mark drawn" : "");
}

std::string seen_words(const PaintMarkSeen& seen) {
    return "paint mark of " + seen.fastener + (seen.still_aligned ? " still aligned" : " has moved");
}

template <class T, class Words>
std::string joined(const std::vector<T>& things, const Words& words, const std::string& lead = {}) {
    Pieces pieces;
    for (const auto& thing : things)
        pieces.add(words(thing));
    std::string text = std::move(pieces).text();
    return text.empty() ? text : lead + text;
}

struct WordsOf {
    const Entry& entry;

    std::string operator()(const Reading& reading) const {
        if (reading.clock_change) {
            return "dial changed, last " + words(reading.clock_change->old_last) + ", then " +
                   words(reading.clock_change->new_first);
        }
        if (entry.odometer) return words(*entry.odometer);
        return entry.hours ? grouped(*entry.hours) + " h" : "nothing could be read";
    }
    std::string operator()(const Fuel& fuel) const {
        const std::string amount = fuel.volume ? words(*fuel.volume) : "amount not known";
        Pieces pieces;
        pieces.add(amount + (fuel.full ? " full" : " part fill"));
        if (fuel.missed_before) pieces.add("one before it not recorded");
        return std::move(pieces).text();
    }
    std::string operator()(const OilChange& change) const {
        Pieces pieces;
        pieces.add(compartment_words(change.compartment));
        std::string oil = change.volume_in ? words(*change.volume_in) : "amount not known";
        oil += after_blank(change.oil_name) + after_blank(change.sae_grade);
        pieces.add(oil);
        if (change.volume_drained) pieces.add(words(*change.volume_drained) + " drained");
        if (change.filter_changed) pieces.add(*change.filter_changed ? "new filter" : "filter kept");
        return std::move(pieces).text();
    }
    std::string operator()(const TopUp& top_up) const {
        Pieces pieces;
        pieces.add(compartment_words(top_up.compartment));
        pieces.add(top_up.volume ? words(*top_up.volume) : "amount not known");
        if (top_up.same_oil) pieces.add(*top_up.same_oil ? "same oil" : "another oil");
        return std::move(pieces).text();
    }
    std::string operator()(const Work& work) const {
        Pieces pieces;
        pieces.add_if_any(work.text).add(joined(entry.does, [](const std::string& s) { return s; }));
        pieces.add(joined(work.checks, check_words)).add(joined(work.parts, part_words, "parts: "));
        pieces.add(joined(work.torques, torque_words)).add(joined(work.paint_marks_seen, seen_words));
        return std::move(pieces).text_or("not described");
    }
    std::string operator()(const Fit& fit) const {
        Pieces pieces;
        std::string what = fit.slot + after_blank(fit.maker) + after_blank(fit.number);
        pieces.add(what);
        if (fit.distance_before) pieces.add("had run " + words(*fit.distance_before));
        return std::move(pieces).text();
    }
    std::string operator()(const Modification& modification) const { return modification.what; }
    std::string operator()(const Measure& measure) const {
        const std::string value =
            measure.value ? grouped(*measure.value) + (measure.unit.empty() ? "" : " ") + measure.unit
                          : "value not known";
        return measure.quantity + after_blank(measure.at) + " " + value;
    }
    std::string operator()(const Sample& sample) const {
        Pieces pieces;
        pieces.add(sample.use == OilUse::virgin ? "virgin oil" : "used oil");
        pieces.add(compartment_words(sample.compartment));
        if (sample.number) pieces.add("number " + *sample.number);
        pieces.add(std::to_string(sample.values.size()) + (sample.values.size() == 1 ? " value" : " values"));
        return std::move(pieces).text();
    }
    std::string operator()(const Fault& fault) const {
        Pieces pieces;
        pieces.add(fault.code).add_if_any(fault.text);
        if (fault.status) pieces.add(std::string(slug(*fault.status)));
        if (fault.cleared && *fault.cleared) pieces.add("cleared");
        return std::move(pieces).text();
    }
    std::string operator()(const Recall& recall) const {
        Pieces pieces;
        pieces.add(std::string(slug(recall.type)) + " " + recall.number).add_if_any(recall.text);
        pieces.add(recall.applies == Applies::no ? "does not apply" : recall.done ? "done" : "open");
        return std::move(pieces).text();
    }
    std::string operator()(const Cost& cost) const {
        Pieces pieces;
        pieces.add(cost.category).add_if_any(cost.text);
        if (cost.every_months) pieces.add("every " + std::to_string(*cost.every_months) + " months");
        if (cost.valuation) pieces.add("a valuation");
        return std::move(pieces).text();
    }
    std::string operator()(const Layup& layup) const {
        const std::string until =
            layup.until ? "until " + spelled_text(*layup.until) : "until further notice";
        return (layup.planned ? "planned, " : "") + until;
    }
    std::string operator()(const Note& /*note*/) const { return entry.note.value_or("empty"); }
    std::string operator()(const Attach& attach) const {
        Pieces pieces;
        pieces.add_if_any(attach.text);
        pieces.add(joined(entry.attachments, [](const AttachmentRef& file) { return file.name; }));
        return std::move(pieces).text_or("a file");
    }
};

/// Parts and labour together; absent where none has a price or currencies differ.
std::optional<Money> parts_and_labour(const Work& work) {
    MoneyByCurrency sum;
    if (work.labour_price) sum.add(*work.labour_price);
    for (const auto& part : work.parts) {
        if (part.price) sum.add(*part.price);
    }
    const auto amounts = sum.amounts();
    return amounts.size() == 1 ? std::optional(amounts.front()) : std::nullopt;
}

} // namespace

std::optional<Money> cost_of(const Entry& entry) {
    if (entry.paid) return entry.paid;
    if (const auto* fuel = std::get_if<Fuel>(&entry.body); fuel != nullptr && fuel->price && fuel->volume) {
        const auto product = price_of(*fuel->price, *fuel->volume);
        return product ? std::optional(*product) : std::nullopt;
    }
    const auto* work = std::get_if<Work>(&entry.body);
    return work == nullptr ? std::nullopt : parts_and_labour(*work);
}

std::string value_words(const SampleValue& value) {
    std::string text;
    switch (value.state) {
    case ValueState::measured:
        text = grouped(value.number);
        break;
    case ValueState::below:
        text = "< " + grouped(value.number);
        break;
    case ValueState::detected:
        return "detected";
    case ValueState::not_detected:
        return "not detected";
    }
    if (!value.unit.empty()) text += " " + value.unit;
    if (value.method) text += " (" + *value.method + ")";
    return text;
}

std::string kind_words(std::string_view kind) {
    if (kind == "attach") return "attachment";
    std::string text(kind);
    std::ranges::replace(text, '-', ' ');
    return text;
}

std::string entry_words(const Entry& entry) { return std::visit(WordsOf{entry}, entry.body); }

std::string entry_sentence(const Entry& entry) {
    const bool is_reading = std::holds_alternative<Reading>(entry.body);
    std::string text = kind_words(kind_slug(entry.body)) + ", " + entry_words(entry);
    if (entry.odometer && !is_reading) text += " at " + words(*entry.odometer);
    text += " on " + spelled_text(entry.date);
    if (const auto cost = cost_of(entry)) text += ", " + words(*cost);
    return text;
}

} // namespace sumpbook::compose
