// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/oil_json.h"

#include "reports/compose/calc_figures.h"

namespace sumpbook::compose {

using document::Array;
using document::Object;
using document::Value;

Value amount_json(const SampleValue& value) {
    switch (value.state) {
    case ValueState::below:
        return Object().add("below", value.number);
    case ValueState::detected:
        return "detected";
    case ValueState::not_detected:
        return "not-detected";
    case ValueState::measured:
        break;
    }
    return value.number;
}

Value km_json(const std::optional<Distance>& distance) {
    return distance ? Value(in_unit(*distance, DistanceUnit::km, 1)) : Value();
}

Value km_json(const std::optional<double>& distance_km) {
    return distance_km ? Value(decimal_from_double(*distance_km, 1)) : Value();
}

Value figure_json(double number) { return figures(number, 12); }

Array texts_json(const std::vector<std::string>& texts) {
    Array items;
    for (const std::string& text : texts)
        items.emplace_back(text);
    return items;
}

} // namespace sumpbook::compose
