// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/bike_vin.h"

#include "model/garage/vin.h"

namespace sumpbook::compose {
namespace {

std::string_view verdict_word(VinVerdict verdict) {
    switch (verdict) {
    case VinVerdict::good:
        return "good";
    case VinVerdict::digit_differs:
        return "digit-differs";
    case VinVerdict::digit_wrong:
        return "digit-wrong";
    case VinVerdict::malformed:
        return "malformed";
    }
    return {};
}

std::optional<std::string> letter(const std::optional<char>& symbol) {
    return symbol ? std::optional(std::string(1, *symbol)) : std::nullopt;
}

std::string check_digit_words(const VinFindings& found, VinVerdict verdict) {
    const std::string printed = "check digit " + letter(found.printed_digit).value_or("");
    if (verdict == VinVerdict::good) return printed + " fits";
    const std::string differs =
        printed + " where " + letter(found.expected_digit).value_or("") + " would fit";
    return verdict == VinVerdict::digit_wrong ? differs
                                              : differs + ", which is ordinary outside the US and Canada";
}

std::string year_words(const std::vector<int>& years) {
    std::string text;
    for (const int year : years)
        text += (text.empty() ? "" : " or ") + std::to_string(year);
    return text;
}

} // namespace

document::Value vin_json(const BikeDetails& bike) {
    if (!bike.vin) return {};
    const auto found = inspect_vin(*bike.vin);
    document::Object object;
    object.add("verdict", verdict_word(judge_vin(found, bike.for_us_or_canada)));
    object.add("well_formed", found.well_formed);
    object.add("fault", found.fault.empty() ? document::Value() : document::Value(found.fault));
    object.add("maker_code", found.well_formed ? document::Value(found.maker_code) : document::Value());
    object.add("check_digit", letter(found.printed_digit));
    object.add("check_digit_expected", letter(found.expected_digit));
    document::Array years;
    for (const int year : found.model_years)
        years.emplace_back(year);
    object.add("model_years", std::move(years));
    object.add("last_four_numeric",
               found.well_formed ? document::Value(found.last_four_numeric) : document::Value());
    return object;
}

std::string vin_words(const BikeDetails& bike) {
    if (!bike.vin) return {};
    const auto found = inspect_vin(*bike.vin);
    if (!found.well_formed) return found.fault;
    std::string text = "maker code " + found.maker_code + "; " +
                       check_digit_words(found, judge_vin(found, bike.for_us_or_canada));
    if (!found.model_years.empty())
        text += "; model year " + year_words(found.model_years) + ", if the maker follows the US rule";
    if (bike.for_us_or_canada.value_or(false) && !found.last_four_numeric)
        text += "; the last four should be digits";
    return text;
}

std::string vin_warning(const BikeDetails& bike) {
    if (!bike.vin) return {};
    if (judge_vin(inspect_vin(*bike.vin), bike.for_us_or_canada) != VinVerdict::digit_wrong) return {};
    return "The check digit of the VIN does not fit: a symbol was mistyped, or the number is not genuine. "
           "Compare it with the frame and the papers.";
}

} // namespace sumpbook::compose
