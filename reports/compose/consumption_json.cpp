// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/consumption.h"

namespace sumpbook::compose {
namespace {

using document::Array;
using document::Object;
using document::Value;

constexpr int km_digits = 3;
constexpr int litre_digits = 3;

Value km(Distance distance) { return in_unit(distance, DistanceUnit::km, km_digits); }
Value litres(Volume volume) { return in_unit(volume, VolumeUnit::l, litre_digits); }

Value rate(const std::optional<double>& figure, int digits) {
    return figure ? Value(decimal_from_double(*figure, digits)) : Value();
}

Value per_100km(const std::optional<Consumption>& consumption) {
    return consumption ? Value(decimal_from_double(consumption->litres_per_100km, 6)) : Value();
}

Object span_json(const usage::FuelSpan& span) {
    Object object;
    object.add("from_entry", span.from_id).add("to_entry", span.to_id);
    object.add("from_date", span.from).add("to_date", span.to);
    object.add("distance_km", km(span.distance)).add("volume_l", litres(span.fuel));
    object.add("consumption_l_per_100km", per_100km(span.consumption));
    object.add("void_because", span.void_because ? Value(words(*span.void_because)) : Value());
    object.add("by_trip", span.by_trip);
    return object;
}

Object fuel_json(const usage::FuelUse& use) {
    Array spans;
    for (const auto& span : use.spans)
        spans.emplace_back(span_json(span));
    Object object;
    object.add("consumption_l_per_100km", per_100km(use.overall));
    object.add("distance_km", km(use.sound_distance)).add("volume_l", litres(use.sound_fuel));
    object.add("spans", std::move(spans));
    return object;
}

std::string_view slug(usage::OilUseVerdict verdict) {
    using usage::OilUseVerdict;
    switch (verdict) {
    case OilUseVerdict::within:
        return "within";
    case OilUseVerdict::above:
        return "above";
    case OilUseVerdict::below_range:
        return "below-range";
    case OilUseVerdict::in_range:
        return "in-range";
    case OilUseVerdict::above_range:
        return "above-range";
    case OilUseVerdict::unknown:
        break;
    }
    return "unknown";
}

Object fill_json(const usage::FillOilUse& use) {
    Object object;
    object.add("oil_change", use.fill.oil_change_id).add("oil", use.fill.oil_name);
    object.add("from_date", use.fill.from).add("until_date", use.fill.until).add("run_in", use.fill.run_in);
    object.add("topped_up_l", litres(use.topped_up)).add("used_l", rate(use.litres_used, litre_digits));
    object.add("distance_km", use.over ? km(*use.over) : Value());
    object.add("used_l_per_1000km", rate(use.litres_per_1000km, 5));
    object.add("at_least_l_per_1000km", rate(use.at_least_litres_per_1000km, 5));
    object.add("verdict", slug(use.verdict));
    return object;
}

std::string_view slug(usage::OilUseAgainst against) {
    if (against == usage::OilUseAgainst::handbook) return "handbook";
    return against == usage::OilUseAgainst::published ? "published" : "nothing";
}

/// The published figures behind the range; empty where the manual's figure counts.
Array published_json(const usage::OilUseResult& use) {
    Array rows;
    if (use.against != usage::OilUseAgainst::published) return rows;
    for (const auto& row : usage::published_oil_use()) {
        if (row.run_in) continue;
        Object object;
        object.add("scope", row.scope).add("as_published", row.as_published);
        object.add("used_l_per_1000km", rate(row.litres_per_1000km, 5));
        object.add("evidence", row.evidence).add("source", row.source);
        rows.emplace_back(std::move(object));
    }
    return rows;
}

Array others_json(const std::vector<OilUsedElsewhere>& others) {
    Array items;
    for (const auto& other : others) {
        Object object;
        object.add("bike", other.bike).add("used_l_per_1000km", rate(other.litres_per_1000km, 5));
        items.emplace_back(std::move(object));
    }
    return items;
}

Object oil_json(const ConsumptionReport& report) {
    const auto& use = report.oil;
    Array fills;
    for (const auto& fill : use.fills)
        fills.emplace_back(fill_json(fill));
    Object object;
    object.add("used_l_per_1000km", rate(use.litres_per_1000km, 5));
    object.add("run_in_l_per_1000km", rate(use.run_in_litres_per_1000km, 5));
    object.add("against", slug(use.against)).add("verdict", slug(use.verdict));
    object.add("low_l_per_1000km", rate(use.low_litres_per_1000km, 5));
    object.add("high_l_per_1000km", rate(use.high_litres_per_1000km, 5));
    object.add("fills", std::move(fills)).add("published", published_json(use));
    return object.add("other_bikes", others_json(report.other_bikes));
}

} // namespace

Value consumption_json(const std::vector<ConsumptionReport>& bikes) {
    Array items;
    for (const auto& bike : bikes) {
        Object object;
        object.add("bike", bike.bike).add("fuel", fuel_json(bike.fuel)).add("oil", oil_json(bike));
        items.emplace_back(std::move(object));
    }
    return document::list_of(std::move(items));
}

} // namespace sumpbook::compose
