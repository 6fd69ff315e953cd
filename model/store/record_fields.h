// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/record.h"
#include "model/store/entry_fields.h"

namespace sumpbook::store {

// Body format 1 of everything that is not an entry; see entry_fields.h.

template <>
inline constexpr int last_of<Cooling> = 2;
template <>
inline constexpr int last_of<FuelType> = 3;
template <>
inline constexpr int last_of<BlockMaterial> = 1;
template <>
inline constexpr int last_of<Bore> = 1;
template <>
inline constexpr int last_of<GearboxOil> = 1;
template <>
inline constexpr int last_of<CountedFrom> = 1;
template <>
inline constexpr int last_of<PlanKind> = 3;
template <>
inline constexpr int last_of<OilBoughtCounts> = 1;

template <class Archive>
void serialize(Archive& ar, ExchangeRate& exchange, unsigned /*version*/) {
    auto& [date, from, to, rate] = exchange;
    ar& date& from& to& rate;
}
template <class Archive>
void serialize(Archive& ar, GarageSettings& settings, unsigned /*version*/) {
    auto& [currency, home_country, distance_unit, volume_unit, consumption_unit, categories, yearly_budgets,
           exchange_rates, price_drift, oil_bought_counts] = settings;
    ar& currency& home_country& distance_unit& volume_unit& consumption_unit& categories;
    ar& money(yearly_budgets) & exchange_rates& price_drift& oil_bought_counts;
}

template <class Archive>
void serialize(Archive& ar, Compartment& compartment, unsigned /*version*/) {
    auto& [slug, holds, holds_with_filter] = compartment;
    ar& slug& holds& holds_with_filter;
}
template <class Archive>
void serialize(Archive& ar, Transfer& transfer, unsigned /*version*/) {
    auto& [date, odometer, price] = transfer;
    ar& date& odometer& money(price);
}
template <class Archive>
void serialize(Archive& ar, BikeDetails& bike, unsigned /*version*/) {
    auto& [name, maker, model, year, vin, plate, displacement, cooling, fuel, block, bore, gearbox_oil,
           wet_clutch, compartments, between_level_marks, odometer_unit, hour_meter, average_speed,
           in_service_date, in_service_odometer, expected_distance, bought, sold, for_us_or_canada,
           oil_profile, oil_carry_over, handbook_oil_use, note] = bike;
    ar& name& maker& model& year& vin& personal(plate) & displacement& cooling& fuel& block& bore;
    ar& gearbox_oil& wet_clutch& compartments& between_level_marks& odometer_unit& hour_meter& average_speed;
    ar& in_service_date& in_service_odometer& expected_distance& mixed(bought) & mixed(sold);
    ar& for_us_or_canada& oil_profile& oil_carry_over& handbook_oil_use& personal(note);
}
template <class Archive>
void serialize(Archive& ar, DataCardValue& card, unsigned /*version*/) {
    auto& [name, value, unit, source] = card;
    ar& name& value& unit& source;
}

template <class Archive>
void serialize(Archive& ar, Limits& limits, unsigned /*version*/) {
    auto& [distance, months, hours] = limits;
    ar& distance& months& hours;
}
template <class Archive>
void serialize(Archive& ar, Margin& margin, unsigned /*version*/) {
    auto& [distance, days, hours] = margin;
    ar& distance& days& hours;
}
template <class Archive>
void serialize(Archive& ar, PlanItem& item, unsigned /*version*/) {
    auto& [slug, label, compartment, slot, first, repeat, counted_from, window, lead, includes, estimate,
           done_by, parts, kind, in_force_from, source] = item;
    ar& slug& label& compartment& slot& first& repeat& counted_from& window& lead& includes;
    ar& money(estimate) & done_by& parts& kind& in_force_from& source;
}
template <class Archive>
void serialize(Archive& ar, Baseline& baseline, unsigned /*version*/) {
    auto& [slug, date, odometer, hours, evidence] = baseline;
    ar& slug& date& odometer& hours& evidence;
}

template <class Archive>
void serialize(Archive& ar, Withdrawal& withdrawal, unsigned /*version*/) {
    auto& [reason] = withdrawal;
    ar& personal(reason);
}
template <class Archive>
void serialize(Archive& ar, Record& record, unsigned /*version*/) {
    auto& [recorded, replaces, content] = record;
    ar& recorded& replaces& mixed(content);
}

} // namespace sumpbook::store
