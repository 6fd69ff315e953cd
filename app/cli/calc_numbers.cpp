// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/calc_numbers.h"

#include "app/cli/typed.h"
#include "model/quantity/temperature.h"

#include <algorithm>

namespace sumpbook::cli {
namespace {

/// The plain form has one reading for a calculator: 1.234 is not one thousand.
DecimalMark mark_for(std::string_view number, DecimalMark mark) {
    const bool plain = mark == DecimalMark::unknown && Decimal::parse(number).has_value();
    return plain ? DecimalMark::point : mark;
}

} // namespace

Result<Decimal> calc_number(const std::string& field, const std::string& text, DecimalMark mark) {
    const auto number = read_number(text, mark_for(text, mark));
    if (!number) return pass_on(placed(number.error(), field, text));
    return number;
}

Result<Decimal> calc_number_above_0(const std::string& field, const std::string& text, DecimalMark mark) {
    auto number = calc_number(field, text, mark);
    if (number && *number <= Decimal{0})
        return pass_on(placed({ProblemKind::refused, "This must be above 0.", {}}, field, text));
    return number;
}

Result<CalcAmount> calc_number_and_unit(const std::string& text, DecimalMark mark) {
    const auto is_letter = [](char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); };
    const auto unit = std::find_if(text.begin(), text.end(), is_letter);
    std::string number(text.begin(), unit);
    while (number.ends_with(' '))
        number.pop_back();
    const auto split = split_number_and_unit(text, mark_for(number, mark));
    if (!split) return pass_on(split.error());
    return CalcAmount{split->number, std::string(split->unit)};
}

Result<double> calc_celsius(const std::string& field, const std::string& text, DecimalMark mark) {
    const auto amount = calc_number_and_unit(text, mark);
    if (!amount) return pass_on(placed(amount.error(), field, text));
    if (amount->unit.empty()) return amount->number.to_double();
    const auto unit = read_temperature_unit(amount->unit);
    if (!unit) return pass_on(placed(unit.error(), field, text));
    return celsius_of({amount->number, *unit});
}

} // namespace sumpbook::cli
