// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/entry_fields_lists.h"

#include "app/cli/suggestions.h"
#include "model/oil/quantities.h"

#include <algorithm>
#include <array>
#include <string_view>
#include <vector>

namespace sumpbook::cli {
namespace {

tl::unexpected<Problem> refuse_value(std::string sentence, const std::string& field,
                                     const std::string& text) {
    return refuse(std::move(sentence), {.file = {}, .line = {}, .column = field, .text = text});
}

std::string_view trimmed(std::string_view text) {
    while (text.starts_with(' '))
        text.remove_prefix(1);
    while (text.ends_with(' '))
        text.remove_suffix(1);
    return text;
}

/// Units a laboratory may print for a quantity: its own, and those that convert without anything assumed.
bool is_unit_of(const oil::Quantity& quantity, std::string_view unit) {
    if (unit.empty()) return false;
    const std::string plain = oil::plain_unit(unit);
    return plain == quantity.unit ||
           (!quantity.unit.empty() && oil::in_oil_unit(Decimal{1}, plain, quantity.unit));
}

/// "mg KOH/g ASTM D2896", "mg KOH/g (ASTM D2896)" or "(ASTM D2896)": the longest start that is a unit of
/// the quantity, and the method behind it. No unit: the usual one is meant.
Result<void> set_unit_and_method(SampleValue& value, const oil::Quantity& quantity, std::string_view behind) {
    behind = trimmed(behind);
    std::size_t end = behind.size();
    while (end > 0 && !is_unit_of(quantity, trimmed(behind.substr(0, end)))) {
        const auto blank = behind.substr(0, end).rfind(' ');
        end = blank == std::string_view::npos ? 0 : blank;
    }
    value.unit = end == 0 ? quantity.unit : oil::plain_unit(trimmed(behind.substr(0, end)));
    std::string_view method = trimmed(behind.substr(end));
    const bool bracketed = method.starts_with('(') && method.ends_with(')');
    if (end == 0 && !method.empty() && !bracketed) {
        const std::string known = quantity.unit.empty() ? "a bare number" : "in " + quantity.unit;
        return refuse("\"" + std::string(method) + "\" is not a unit of " + quantity.name +
                      ", which is given " + known +
                      ". A method stands behind the unit or in brackets: \"tbn=8.1 mg KOH/g ASTM D2896\".");
    }
    if (bracketed) method = trimmed(method.substr(1, method.size() - 2));
    if (!method.empty()) value.method = std::string(method);
    return {};
}

std::vector<std::string> quantity_slugs() {
    std::vector<std::string> slugs;
    for (const auto& quantity : oil::sample_quantities())
        slugs.push_back(quantity.slug);
    return slugs;
}

Result<void> set_number(SampleValue& value, const oil::Quantity& quantity, std::string_view text,
                        DecimalMark mark) {
    if (text.starts_with('<')) {
        value.state = ValueState::below;
        text = trimmed(text.substr(1));
    }
    const auto split = split_number_and_unit(text, mark);
    if (!split) return pass_on(split.error());
    if (split->number.is_negative()) return refuse("A value of a sample cannot be negative.");
    value.number = split->number;
    return set_unit_and_method(value, quantity, split->unit);
}

} // namespace

Result<SampleValue> typed_sample_value(const std::string& field, const std::string& text, const TypedAs& as) {
    const auto equals = text.find('=');
    if (equals == std::string::npos)
        return refuse_value("Write a value as Fe=12, Pb=<2, \"tbn=8.1 mg KOH/g\" or glycol=detected.", field,
                            text);
    const std::string name(trimmed(std::string_view(text).substr(0, equals)));
    const oil::Quantity* quantity = oil::find_quantity(name);
    if (quantity == nullptr) {
        return refuse_value("\"" + name + "\" is nothing that a sample of oil is known to hold." +
                                did_you_mean(name, quantity_slugs()) + " See: sumpbook oil limits",
                            field, text);
    }
    SampleValue value{
        .quantity = quantity->slug, .state = ValueState::measured, .number = {}, .unit = {}, .method = {}};
    const std::string_view said = trimmed(std::string_view(text).substr(equals + 1));
    constexpr std::array<std::string_view, 5> absent{"not detected", "not-detected", "none detected", "nd",
                                                     "ND"};
    if (said == "detected" || std::ranges::find(absent, said) != absent.end()) {
        value.state = said == "detected" ? ValueState::detected : ValueState::not_detected;
        value.unit = quantity->unit;
        return value;
    }
    if (auto set = set_number(value, *quantity, said, as.mark); !set)
        return pass_on(placed(set.error(), field, text));
    return value;
}

} // namespace sumpbook::cli
