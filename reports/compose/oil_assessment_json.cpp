// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/garage/slugs.h"
#include "reports/compose/oil_assessment.h"
#include "reports/compose/oil_json.h"

namespace sumpbook::compose {
namespace {

using document::Array;
using document::Object;
using document::Value;
using oil::RatedValue;
using oil::SampleAssessment;

Value text_or_null(const std::string& text) { return text.empty() ? Value() : Value(text); }

std::optional<Decimal> rounded_double(const std::optional<double>& number, int scale) {
    if (!number) return std::nullopt;
    return decimal_from_double(*number, scale);
}

Value limit_json(const std::optional<oil::LimitRow>& limit) {
    if (!limit) return nullptr;
    Object item;
    if (limit->basis == oil::Basis::detection) return item.add("operator", "detected").add("value", nullptr);
    return item.add("operator", oil::symbol(limit->op)).add("value", limit->value).add("unit", limit->unit);
}

Value rate_json(const std::optional<oil::ElementRate>& rate) {
    if (!rate) return nullptr;
    const bool rated = rate->standing == oil::RateStanding::rated;
    return Object()
        .add("low_ppm_per_10h", decimal_from_double(rate->low_ppm_per_10h, 2))
        .add("high_ppm_per_10h", decimal_from_double(rate->high_ppm_per_10h, 2))
        .add("hours", decimal_from_double(rate->hours, 1))
        .add("rated", rated)
        .add("abnormal", rate->abnormal);
}

Value value_json(const RatedValue& value) {
    return Object()
        .add("quantity", value.written.quantity)
        .add("value", amount_json(value.written))
        .add("level", value.level)
        .add("ladder", oil::slug(value.ladder))
        .add("set", text_or_null(value.set))
        .add("source", text_or_null(value.source))
        .add("unit", text_or_null(value.written.unit))
        .add("new_oil", value.fresh ? amount_json(*value.fresh) : Value())
        .add("limit", limit_json(value.limit))
        .add("unrated", value.unrated ? Value(oil::slug(*value.unrated)) : Value())
        .add("rate", rate_json(value.rate))
        .add("notes", texts_json(value.notes));
}

Value pattern_json(const oil::PatternFound& pattern) {
    static constexpr const char* kinds[] = {"cause", "run-in", "remark"};
    return Object()
        .add("pattern", pattern.id)
        .add("kind", kinds[static_cast<std::size_t>(pattern.kind)])
        .add("quantities", texts_json(pattern.by))
        .add("cause", pattern.cause)
        .add("source", pattern.source);
}

Value wear_json(const oil::WearHistory& wear) {
    const auto per_1000km = [](double number) { return decimal_from_double(number, 3); };
    const auto usual = oil::median_wear_per_1000km(wear);
    return Object()
        .add("quantity", wear.now->element)
        .add("measured_mg_kg_per_1000km", per_1000km(wear.now->measured_per_1000km()))
        .add("corrected_mg_kg_per_1000km", per_1000km(wear.now->per_1000km()))
        .add("usual_mg_kg_per_1000km", usual ? Value(per_1000km(*usual)) : Value())
        .add("twice_as_fast", oil::wears_twice_as_fast(wear))
        .add("notes", texts_json(wear.now->notes));
}

Value viscosity_json(const oil::ViscosityFindings& found) {
    Object item;
    item.add("change_percent", rounded_double(found.change_percent, 2));
    item.add("reference", text_or_null(found.reference));
    item.add("grade", found.grade ? Value(oil::text_of(*found.grade)) : Value());
    item.add("in_grade", found.in_band ? Value(*found.in_band == oil::BandPosition::inside) : Value());
    item.add("below_shear_floor", found.below_shear_floor);
    item.add("viscosity_index", found.index ? Value(found.index->whole) : Value());
    item.add("petrol_low_percent",
             found.petrol ? Value(decimal_from_double(found.petrol->lowest_percent, 2)) : Value());
    item.add("petrol_high_percent",
             found.petrol ? Value(decimal_from_double(found.petrol->highest_percent, 2)) : Value());
    return item;
}

Value sample_json(const SampleAssessment& sample) {
    Array values;
    for (const RatedValue& value : sample.values)
        values.push_back(value_json(value));
    Array patterns;
    for (const auto& pattern : sample.patterns)
        patterns.push_back(pattern_json(pattern));
    Array wear;
    for (const auto& one : sample.wear)
        wear.push_back(wear_json(one));
    const auto& run = sample.filled.distance_on_oil;
    Object item;
    item.add("bike", sample.bike).add("sample", sample.sample).add("sample_date", sample.date);
    item.add("values", std::move(values)).add("word", oil::slug(sample.whole.word));
    item.add("advice", oil::slug(sample.advice.kind));
    item.add("advice_because", texts_json(sample.advice.because))
        .add("look_at", texts_json(sample.advice.look_at));
    item.add("missing", texts_json(sample.whole.missing));
    item.add("laboratory", sample.laboratory ? Value(slug(*sample.laboratory)) : Value());
    item.add("laboratory_words", sample.laboratory_words);
    item.add("coolant_metals", texts_json(sample.coolant.metals));
    item.add("patterns", std::move(patterns)).add("viscosity", viscosity_json(sample.viscosity));
    item.add("wear", std::move(wear));
    item.add("entry", sample.entry_id).add("compartment", sample.compartment).add("profile", sample.profile);
    item.add("distance_on_oil_km", run ? Value(in_unit(*run, DistanceUnit::km, 1)) : Value());
    item.add("hours_on_oil", sample.filled.hours_on_oil);
    item.add("caveats", texts_json(sample.caveats)).add("cautions", texts_json(sample.cautions));
    return item;
}

} // namespace

Value oil_assessment_json(const std::vector<SampleAssessment>& samples) {
    Array items;
    for (const SampleAssessment& sample : samples)
        items.push_back(sample_json(sample));
    return document::list_of(std::move(items));
}

} // namespace sumpbook::compose
