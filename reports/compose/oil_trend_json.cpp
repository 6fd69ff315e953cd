// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/oil_json.h"
#include "reports/compose/oil_trend.h"

namespace sumpbook::compose {
namespace {

using document::Array;
using document::Object;
using document::Value;
using oil::QuantityTrend;
using oil::TrendPoint;

Value rate_json(const std::optional<oil::ElementRate>& rate) {
    static constexpr const char* standings[] = {"rated", "unreliable", "no-real-change", "open"};
    if (!rate) return nullptr;
    Object item;
    item.add("low_ppm_per_10h", decimal_from_double(rate->low_ppm_per_10h, 2));
    item.add("high_ppm_per_10h", decimal_from_double(rate->high_ppm_per_10h, 2));
    const auto& distance = rate->ppm_per_1000km;
    item.add("low_ppm_per_1000km", distance ? Value(decimal_from_double(distance->first, 3)) : Value());
    item.add("high_ppm_per_1000km", distance ? Value(decimal_from_double(distance->second, 3)) : Value());
    item.add("hours", decimal_from_double(rate->hours, 1));
    return item.add("standing", standings[static_cast<std::size_t>(rate->standing)])
        .add("noise_tested", rate->noise_tested);
}

Value point_json(const TrendPoint& point) {
    Object item;
    item.add("sample", point.sample).add("date", point.date).add("fill", point.fill);
    item.add("ends_fill", point.ends_fill).add("oil", point.oil_name);
    item.add("position_km", km_json(point.position));
    item.add("distance_on_oil_km", km_json(point.distance_on_oil));
    item.add("value", amount_json(point.value)).add("method", point.value.method);
    item.add("measured_mg_kg_per_1000km",
             point.wear ? Value(decimal_from_double(point.wear->measured_per_1000km(), 3)) : Value());
    item.add("corrected_mg_kg_per_1000km",
             point.wear ? Value(decimal_from_double(point.wear->per_1000km(), 3)) : Value());
    item.add("wear_is_at_most", point.wear.has_value() && point.value.state == ValueState::below);
    item.add("since_last", rate_json(point.since_last));
    return item.add("notes", texts_json(point.wear ? point.wear->notes : std::vector<std::string>{}));
}

void add_lines(Object& item, const QuantityTrend& trend) {
    const auto& line = trend.line;
    const auto& median = trend.median_line;
    const auto& range = trend.range;
    item.add("theil_sen_slope", median ? figure_json(median->slope) : Value());
    item.add("slope_low", range ? figure_json(range->slope.low) : Value());
    item.add("slope_high", range ? figure_json(range->slope.high) : Value());
    item.add("slope_confidence", range ? figure_json(range->confidence) : Value());
    item.add("least_squares_slope", line ? figure_json(line->slope) : Value());
    item.add("least_squares_intercept", line ? figure_json(line->intercept) : Value());
    item.add("residual_sd", line ? figure_json(line->residual_sd) : Value());
    item.add("along", trend.along_distance ? "distance_1000km" : "years");
}

void add_tests(Object& item, const QuantityTrend& trend) {
    const auto& test = trend.test;
    item.add("mann_kendall_s", test ? Value(test->s) : Value());
    item.add("mann_kendall_p_two_sided", test ? figure_json(test->p_two_sided) : Value());
    item.add("mann_kendall_exact", test ? Value(test->exact) : Value());
    const auto& limits = trend.limits;
    item.add("usual_low", limits ? figure_json(limits->lower) : Value());
    item.add("usual_high", limits ? figure_json(limits->upper) : Value());
    item.add("latest_is_unusual", trend.latest_is_unusual());
    const auto& change = trend.change;
    item.add("change_after_fill", change ? Value(change->last_before) : Value());
    item.add("change_p", change ? figure_json(change->p) : Value());
}

Value summary_json(const QuantityTrend& trend) {
    if (!trend.summary) return nullptr;
    return Object()
        .add("median", figure_json(trend.summary->median))
        .add("mean", figure_json(trend.summary->mean))
        .add("sd", figure_json(trend.summary->sd));
}

Value trend_json(const QuantityTrend& trend) {
    Array points;
    for (const TrendPoint& point : trend.points)
        points.push_back(point_json(point));
    const bool wear = trend.of == oil::TrendOf::wear_rate;
    Object item;
    item.add("bike", trend.bike).add("compartment", trend.compartment).add("quantity", trend.quantity);
    item.add("unit", trend.unit).add("of", wear ? "wear-rate" : "value").add("word", slug(trend.word));
    item.add("fills", trend.series.size()).add("fills_below", trend.below);
    item.add("points", std::move(points));
    add_tests(item, trend);
    add_lines(item, trend);
    return item.add("summary", summary_json(trend)).add("notes", texts_json(trend.notes));
}

} // namespace

Value oil_trend_json(const std::vector<QuantityTrend>& trends) {
    Array items;
    for (const QuantityTrend& trend : trends)
        items.push_back(trend_json(trend));
    return document::list_of(std::move(items));
}

} // namespace sumpbook::compose
