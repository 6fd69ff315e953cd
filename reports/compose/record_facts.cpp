// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/record_facts.h"

#include "model/garage/slugs.h"
#include "reports/compose/entry_cells.h"
#include "reports/compose/entry_words.h"
#include "reports/compose/plan.h"
#include "reports/compose/words.h"

#include <algorithm>

namespace sumpbook::compose {
namespace {

class Lines {
public:
    Lines& add(const std::string& label, const std::string& text) {
        if (!text.empty()) facts_.lines.emplace_back(label, text);
        return *this;
    }
    Lines& text(const std::string& label, const std::optional<std::string>& value) {
        return value ? add(label, *value) : *this;
    }
    Lines& number(const std::string& label, const std::optional<Decimal>& value) {
        return value ? add(label, grouped(*value)) : *this;
    }
    Lines& whole(const std::string& label, const std::optional<int>& value) {
        return value ? add(label, std::to_string(*value)) : *this;
    }
    template <class Unit>
    Lines& amount(const std::string& label, const std::optional<Written<Unit>>& value) {
        return value ? add(label, words(*value)) : *this;
    }
    Lines& money(const std::string& label, const std::optional<Money>& value) {
        return value ? add(label, words(*value)) : *this;
    }
    Lines& day(const std::string& label, const std::optional<Date>& value) {
        return value ? add(label, spelled_text(*value)) : *this;
    }
    Lines& yes_no(const std::string& label, const std::optional<bool>& value) {
        return value ? add(label, *value ? "yes" : "no") : *this;
    }
    template <class Enum>
    Lines& word(const std::string& label, const std::optional<Enum>& value) {
        return value ? add(label, std::string(slug(*value))) : *this;
    }
    Lines& list(const std::string& label, const std::vector<std::string>& texts) {
        std::string all;
        for (const auto& text : texts)
            all += (all.empty() ? "" : ", ") + text;
        return add(label, all);
    }
    [[nodiscard]] document::Facts take() && { return std::move(facts_); }

private:
    document::Facts facts_;
};

std::string transfer_words(const Transfer& transfer) {
    std::string text = spelled_text(transfer.date);
    if (transfer.odometer) text += " at " + words(*transfer.odometer);
    if (transfer.price) text += " for " + words(*transfer.price);
    return text;
}

std::string margin_words(const Margin& margin) {
    std::string text;
    const auto add = [&](const std::string& part) { text += (text.empty() ? "" : ", ") + part; };
    if (margin.distance) add(words(*margin.distance));
    if (margin.days) add(std::to_string(*margin.days) + " days");
    if (margin.hours) add(grouped(*margin.hours) + " h");
    return text.empty() ? "none" : text;
}

std::string consumption_unit_words(ConsumptionUnit unit) { return std::string(symbol(unit)); }

struct Facts {
    Lines& to;

    void operator()(const GarageSettings& settings) const {
        to.add("Currency", settings.currency.code()).text("Home country", settings.home_country);
        to.add("Distances in", std::string(symbol(settings.distance_unit)));
        to.add("Volumes in", std::string(symbol(settings.volume_unit)));
        to.add("Consumption in", consumption_unit_words(settings.consumption_unit));
        to.list("Categories", settings.categories);
        for (const auto& [category, budget] : settings.yearly_budgets)
            to.add("Budget a year, " + category, words(budget));
        for (const auto& rate : settings.exchange_rates)
            to.add("Rate " + rate.from.code() + " to " + rate.to.code() + " on " + iso_text(rate.date),
                   rate.rate.text());
        for (const auto& [category, drift] : settings.price_drift_percent_a_year)
            to.add("Price drift, " + category, drift.text() + " % a year");
        const bool when_bought = settings.oil_bought_counts == OilBoughtCounts::when_bought;
        to.add("Oil bought counts", when_bought ? "when bought" : "per litre used");
    }
    void operator()(const BikeDetails& d) const {
        to.add("Name", d.name).text("Maker", d.maker).text("Model", d.model).whole("Year", d.year);
        to.text("VIN", d.vin).text("Plate", d.plate).yes_no("For the US or Canada", d.for_us_or_canada);
        to.whole("Engine, cm3", d.displacement_cm3).word("Cooling", d.cooling).word("Fuel", d.fuel);
        to.word("Block", d.block).word("Bore", d.bore).word("Gearbox oil", d.gearbox_oil);
        to.yes_no("Wet clutch", d.wet_clutch);
        for (const auto& compartment : d.compartments) {
            to.add("Holds, " + compartment.slug, words(compartment.holds));
            to.amount("Holds with a new filter, " + compartment.slug, compartment.holds_with_filter);
        }
        to.amount("Between level marks", d.between_level_marks);
        to.add("Dial", std::string(symbol(d.odometer_unit))).yes_no("Hour meter", d.hour_meter);
        to.number("Average speed, km/h", d.average_speed_km_h).day("On the road since", d.in_service_date);
        to.amount("Dial on that day", d.in_service_odometer);
        to.amount("Expected a year", d.expected_distance_a_year);
        if (d.bought) to.add("Bought", transfer_words(*d.bought));
        if (d.sold) to.add("Sold", transfer_words(*d.sold));
        to.text("Oil limits", d.oil_profile).number("Old oil that stays in", d.oil_carry_over);
        to.number("Oil use by the handbook, L/1 000 km", d.handbook_oil_use_l_per_1000km);
        to.text("Note", d.note);
    }
    void operator()(const DataCardValue& card) const {
        to.add("Value", card.value).text("Unit", card.unit).text("Source", card.source);
    }
    void operator()(const PlanItem& item) const {
        to.add("What", item.label).text("Compartment", item.compartment).text("Slot", item.slot);
        if (item.first.any()) to.add("First", limits_words(item.first));
        if (item.repeat.any()) to.add("Every", limits_words(item.repeat));
        to.word("Counted from", std::optional(item.counted_from));
        if (item.window) to.add("Window", margin_words(*item.window));
        if (item.lead) to.add("Lead", margin_words(*item.lead));
        to.list("Includes", item.includes).money("Estimate", item.estimate).word("Done by", item.done_by);
        to.list("Parts", item.parts).word("Kind", std::optional(item.kind));
        to.day("In force from", item.in_force_from).text("Source", item.source);
    }
    void operator()(const Baseline& base) const {
        to.day("Last done", base.date).amount("Odometer", base.odometer).number("Hours", base.hours);
        to.word("Evidence", base.evidence);
    }
    void operator()(const Entry& entry) const {
        to.add("Kind", kind_words(kind_slug(entry.body)));
        for (const auto& [label, text] : entry_facts(entry).lines)
            to.add(label, text);
        std::vector<std::string> files;
        for (const auto& file : entry.attachments)
            files.push_back(file.name + " (" + std::to_string(file.size_bytes) + " bytes)");
        to.list("Files", files);
        std::vector<std::string> doubts;
        for (const auto& doubt : entry.doubts)
            doubts.push_back(doubt.column + " \"" + doubt.text + "\"");
        to.list("In doubt", doubts);
    }
    void operator()(const Withdrawal& withdrawal) const { to.text("Reason", withdrawal.reason); }
};

std::optional<std::string> text_in(const document::Facts& facts, const std::string& label) {
    const auto found = std::ranges::find_if(facts.lines, [&](const auto& fact) { return fact.first == label; });
    return found == facts.lines.end() ? std::nullopt : std::optional(found->second);
}

bool is_withdrawal(const RecordContent* content) { return std::holds_alternative<Withdrawal>(*content); }

/// "withdrawn: typed twice" beside "stands".
DifferingField standing(const std::vector<const RecordContent*>& versions) {
    DifferingField field{"Says", {}};
    for (const auto* content : versions) {
        const auto* gone = std::get_if<Withdrawal>(content);
        if (gone == nullptr)
            field.texts.push_back(record_title(*content));
        else
            field.texts.push_back("withdrawn" + (gone->reason ? ": " + *gone->reason : std::string()));
    }
    return field;
}

std::vector<std::string> labels_of(const std::vector<document::Facts>& all) {
    std::vector<std::string> labels;
    for (const auto& facts : all) {
        for (const auto& [label, text] : facts.lines) {
            if (std::ranges::find(labels, label) == labels.end()) labels.push_back(label);
        }
    }
    return labels;
}

/// What one version says of a field; nothing for a withdrawal, which says nothing about it.
struct Said {
    bool says = false;
    std::string text;
};

} // namespace

std::string record_title(const RecordContent& content) {
    struct Title {
        std::string operator()(const GarageSettings&) const { return "settings of the garage"; }
        std::string operator()(const BikeDetails&) const { return "details of the bike"; }
        std::string operator()(const DataCardValue& card) const { return "data card, " + card.name; }
        std::string operator()(const PlanItem& item) const { return "plan item " + item.slug; }
        std::string operator()(const Baseline& base) const {
            return base.slug + " last done before the record";
        }
        std::string operator()(const Entry& entry) const { return entry_sentence(entry); }
        std::string operator()(const Withdrawal&) const { return "withdrawal"; }
    };
    return std::visit(Title{}, content);
}

std::string version_title(const RecordContent& content) {
    const auto* gone = std::get_if<Withdrawal>(&content);
    if (gone == nullptr) return record_title(content);
    return "withdrawn" + (gone->reason ? ": " + *gone->reason : std::string());
}

document::Facts record_facts(const RecordContent& content) {
    Lines lines;
    std::visit(Facts{lines}, content);
    return std::move(lines).take();
}

std::vector<DifferingField> differing_fields(const std::vector<const RecordContent*>& versions) {
    std::vector<DifferingField> fields;
    const bool some_gone = std::ranges::any_of(versions, is_withdrawal);
    if (some_gone) fields.push_back(standing(versions));
    std::vector<document::Facts> all;
    for (const auto* content : versions)
        all.push_back(is_withdrawal(content) ? document::Facts{} : record_facts(*content));
    for (const auto& label : labels_of(all)) {
        std::vector<Said> said;
        for (std::size_t i = 0; i < versions.size(); ++i)
            said.push_back({!is_withdrawal(versions[i]), text_in(all[i], label).value_or("-")});
        const auto first = std::ranges::find_if(said, &Said::says);
        const bool differs = std::ranges::any_of(
            said, [&](const Said& one) { return one.says && one.text != first->text; });
        if (!differs) continue;
        DifferingField field{label, {}};
        for (const auto& one : said)
            field.texts.push_back(one.says ? one.text : std::string());
        fields.push_back(std::move(field));
    }
    return fields;
}

} // namespace sumpbook::compose
