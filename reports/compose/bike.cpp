// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/bike.h"

#include "model/garage/slugs.h"
#include "reports/compose/bike_vin.h"
#include "reports/compose/made_words.h"
#include "reports/compose/words.h"

#include <algorithm>

namespace sumpbook::compose {
namespace {

using document::Cell;
using document::Object;

/// The newest reading as on the dial; absent if there is none.
std::optional<WrittenDistance> last_odometer(const Bike& bike) {
    std::optional<WrittenDistance> last;
    for (const auto& entry : bike.log) {
        if (entry.value.odometer) last = entry.value.odometer;
    }
    return last;
}

template <class Enum>
std::optional<std::string> word(const std::optional<Enum>& value) {
    if (!value) return std::nullopt;
    return std::string(slug(*value));
}

std::optional<Decimal> km(const std::optional<WrittenDistance>& written) {
    if (!written) return std::nullopt;
    const auto distance = distance_of(*written);
    if (!distance) return std::nullopt;
    return in_unit(*distance, DistanceUnit::km, 3);
}

Object transfer_json(const Transfer& transfer) {
    Object object;
    object.add("date", transfer.date).add("odometer_km", km(transfer.odometer));
    object.add("cost_minor", transfer.price ? document::Value(transfer.price->minor) : document::Value());
    object.add("currency",
               transfer.price ? document::Value(transfer.price->currency.code()) : document::Value());
    return object;
}

document::Value maybe_transfer(const std::optional<Transfer>& transfer) {
    return transfer ? document::Value(transfer_json(*transfer)) : document::Value();
}

std::string transfer_words(const Transfer& transfer) {
    std::string text = spelled_text(transfer.date);
    if (transfer.odometer) text += " at " + words(*transfer.odometer);
    if (transfer.price) text += " for " + words(*transfer.price);
    return text;
}

class FactList {
public:
    void add(const std::string& label, const std::optional<std::string>& text) {
        if (text) facts_.lines.emplace_back(label, *text);
    }
    [[nodiscard]] document::Facts facts() && { return std::move(facts_); }

private:
    document::Facts facts_;
};

std::string compartment_words(const Compartment& compartment) {
    std::string text = words(compartment.holds);
    if (compartment.holds_with_filter)
        text += ", " + words(*compartment.holds_with_filter) + " with a new filter";
    return text;
}

document::Value litres(const std::optional<WrittenVolume>& volume) {
    if (!volume) return {};
    const auto exact = volume_of(*volume);
    return exact ? document::Value(in_unit(*exact, VolumeUnit::l, 3)) : document::Value();
}

document::Array compartments_json(const std::vector<Compartment>& compartments) {
    document::Array items;
    for (const auto& compartment : compartments) {
        Object item;
        item.add("compartment", compartment.slug).add("volume_l", litres(compartment.holds));
        item.add("volume_with_filter_l", litres(compartment.holds_with_filter));
        items.emplace_back(std::move(item));
    }
    return items;
}

std::optional<std::string> yes_or_no(const std::optional<bool>& value) {
    if (!value) return std::nullopt;
    return *value ? "yes" : "no";
}

std::optional<std::string> amount(const std::optional<Decimal>& number, const std::string& unit) {
    if (!number) return std::nullopt;
    return grouped(*number) + unit;
}

void add_identity(FactList& list, const BikeDetails& d) {
    list.add("Maker", d.maker);
    list.add("Model", d.model);
    if (d.year) list.add("Year", std::to_string(*d.year));
    list.add("VIN", d.vin);
    if (d.vin) list.add("The VIN says", vin_words(d));
    list.add("For the US or Canada", yes_or_no(d.for_us_or_canada));
    list.add("Plate", d.plate);
}

void add_engine(FactList& list, const BikeDetails& d) {
    if (d.displacement_cm3) list.add("Engine", std::to_string(*d.displacement_cm3) + " cm3");
    list.add("Cooling", word(d.cooling));
    list.add("Fuel", word(d.fuel));
    list.add("Block", word(d.block));
    list.add("Bore", word(d.bore));
    list.add("Gearbox oil", word(d.gearbox_oil));
    list.add("Wet clutch", yes_or_no(d.wet_clutch));
    for (const auto& compartment : d.compartments)
        list.add("Holds, " + compartment.slug, compartment_words(compartment));
    if (d.between_level_marks) list.add("Between level marks", words(*d.between_level_marks));
    list.add("Oil limits", d.oil_profile);
    list.add("Old oil that stays in", amount(d.oil_carry_over, " of it"));
    list.add("Oil use by the handbook", amount(d.handbook_oil_use_l_per_1000km, " L/1 000 km"));
}

void add_use(FactList& list, const BikeDetails& d) {
    list.add("Dial", std::string(symbol(d.odometer_unit)));
    list.add("Hour meter", yes_or_no(d.hour_meter));
    list.add("Average speed", amount(d.average_speed_km_h, " km/h"));
    if (d.in_service_date) list.add("On the road since", spelled_text(*d.in_service_date));
    if (d.in_service_odometer) list.add("Dial on that day", words(*d.in_service_odometer));
    if (d.expected_distance_a_year) list.add("Expected a year", words(*d.expected_distance_a_year));
    if (d.bought) list.add("Bought", transfer_words(*d.bought));
    if (d.sold) list.add("Sold", transfer_words(*d.sold));
}

} // namespace

document::Value bikes_json(const std::vector<const Bike*>& bikes) {
    document::Array items;
    for (const auto* bike : bikes) {
        const auto& details = bike->details.value;
        Object item;
        item.add("bike", details.name)
            .add("maker", details.maker)
            .add("model", details.model)
            .add("year", details.year);
        item.add("odometer_km", km(last_odometer(*bike))).add("odometer_unit", symbol(details.odometer_unit));
        item.add("entries", bike->log.size()).add("plan_items", bike->plan.size());
        item.add("sold", details.sold.has_value());
        items.emplace_back(std::move(item));
    }
    return document::list_of(std::move(items));
}

document::Document bikes_text(const std::vector<const Bike*>& bikes) {
    document::Document text;
    if (bikes.empty()) {
        text.sentence("No bike yet. Add one: sumpbook -g FILE bike add \"Old twin\" --odometer-unit km");
        return text;
    }
    document::Table table{{{"Bike", {}},
                           {"Made", {}},
                           {"Last reading", document::Align::right},
                           {"Entries", document::Align::right},
                           {"", {}}},
                          {}};
    for (const auto* bike : bikes) {
        const auto& details = bike->details.value;
        table.rows.push_back({Cell{details.name, {}}, Cell{made_words(details), {}},
                              Cell{words_or_dash(last_odometer(*bike)), {}},
                              Cell{std::to_string(bike->log.size()), {}},
                              Cell{details.sold ? "sold" : "", {}}});
    }
    text.table(std::move(table));
    return text;
}

document::Value bike_json(const Bike& bike) {
    const auto& d = bike.details.value;
    Object object = document::result();
    object.add("bike", d.name).add("maker", d.maker).add("model", d.model).add("year", d.year);
    object.add("vin", d.vin).add("vin_says", vin_json(d)).add("for_us_or_canada", d.for_us_or_canada);
    object.add("plate", d.plate).add("displacement_cm3", d.displacement_cm3).add("cooling", word(d.cooling));
    object.add("fuel", word(d.fuel)).add("block", word(d.block)).add("bore", word(d.bore));
    object.add("gearbox_oil", word(d.gearbox_oil)).add("wet_clutch", d.wet_clutch);
    object.add("compartments", compartments_json(d.compartments));
    object.add("between_level_marks_l", litres(d.between_level_marks));
    object.add("odometer_unit", symbol(d.odometer_unit)).add("hour_meter", d.hour_meter);
    object.add("average_speed_km_h", d.average_speed_km_h).add("in_service_date", d.in_service_date);
    object.add("in_service_odometer_km", km(d.in_service_odometer));
    object.add("expected_distance_a_year_km", km(d.expected_distance_a_year));
    object.add("bought", maybe_transfer(d.bought)).add("sold", maybe_transfer(d.sold));
    object.add("oil_profile", d.oil_profile).add("oil_carry_over", d.oil_carry_over);
    object.add("handbook_oil_use_l_per_1000km", d.handbook_oil_use_l_per_1000km).add("note", d.note);
    object.add("odometer_km", km(last_odometer(bike))).add("entries", bike.log.size());
    return object;
}

document::Document bike_text(const Bike& bike) {
    const auto& d = bike.details.value;
    FactList list;
    add_identity(list, d);
    add_engine(list, d);
    add_use(list, d);
    list.add("Last reading", words_or_dash(last_odometer(bike)));
    list.add("Entries", std::to_string(bike.log.size()));
    list.add("Note", d.note);
    document::Document text;
    text.heading(d.name).facts(std::move(list).facts());
    if (const auto warning = vin_warning(d); !warning.empty())
        text.sentence(warning, document::Severity::caution);
    if (bike.details.in_conflict()) {
        text.sentence("These details were changed in two places; the change recorded last is shown. See: "
                      "sumpbook log conflicts",
                      document::Severity::caution);
    }
    return text;
}

document::Value card_json(const Bike& bike) {
    document::Array items;
    for (const auto& line : bike.card) {
        Object item;
        item.add("bike", bike.details.value.name).add("name", line.value.name).add("value", line.value.value);
        item.add("unit", line.value.unit).add("source", line.value.source).add("id", line.id);
        items.emplace_back(std::move(item));
    }
    return document::list_of(std::move(items));
}

bool names_card_line(const DataCardValue& line, std::string_view typed) {
    const auto lowered = [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; };
    return !std::ranges::search(line.name, typed, {}, lowered, lowered).empty();
}

document::Document card_text(const Bike& bike) {
    document::Document text;
    text.heading("Data card of " + bike.details.value.name);
    if (bike.card.empty()) {
        text.sentence(
            "Nothing on the card yet. Put torques, capacities, pressures, clearances and part numbers here, "
            "from the maker's handbook.");
        return text;
    }
    document::Table table{{{"What", {}}, {"Value", document::Align::right}, {"Unit", {}}, {"Source", {}}},
                          {}};
    for (const auto& line : bike.card) {
        table.rows.push_back({Cell{line.value.name, {}}, Cell{line.value.value, {}},
                              Cell{line.value.unit.value_or(""), {}},
                              Cell{line.value.source.value_or("not stated"), {}}});
    }
    text.table(std::move(table));
    text.sentence("Check a figure against the maker's handbook before you work by it.");
    return text;
}

} // namespace sumpbook::compose
