// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/calc_results.h"

#include "reports/compose/calc_figures.h"
#include "reports/compose/words.h"

#include <fmt/format.h>

#include <array>

namespace sumpbook::compose {
namespace {

using document::Array;
using document::Document;
using document::Facts;
using document::Object;
using document::Severity;
using document::Value;

/// "8", "8 and 12", "8, 12 and 16".
std::string listed(const std::vector<int>& numbers) {
    std::string text;
    for (std::size_t i = 0; i < numbers.size(); ++i) {
        if (i > 0) text += i + 1 == numbers.size() ? " and " : ", ";
        text += std::to_string(numbers[i]);
    }
    return text;
}

std::string_view slug_of(oil::GradeOutcome outcome) {
    switch (outcome) {
    case oil::GradeOutcome::found:
        return "found";
    case oil::GradeOutcome::no_band:
        return "no-band";
    case oil::GradeOutcome::ambiguous:
        return "ambiguous";
    case oil::GradeOutcome::sheared:
        return "sheared";
    }
    return {};
}

std::string band_words(int hot) {
    const auto band = oil::band_of({std::nullopt, hot});
    if (!band || !band->below_mm2_s) return {};
    return fmt::format("from {} to below {} mm2/s at 100 °C", band->from_mm2_s.text(),
                       band->below_mm2_s->text());
}

Document grade_text(const std::string& kv100, const std::string& hths, const oil::HotGrade& found) {
    Document text;
    switch (found.outcome) {
    case oil::GradeOutcome::found:
        text.sentence(fmt::format("SAE {}: {} (SAE J300, 2015).", *found.grade, band_words(*found.grade)));
        if (found.light_winter_only) {
            text.sentence(
                fmt::format("At {} mPa s under high shear that holds for 0W-{grade}, 5W-{grade} and "
                            "10W-{grade} only; heavier winter grades and SAE {grade} need more.",
                            hths, fmt::arg("grade", *found.grade)),
                Severity::caution);
        }
        break;
    case oil::GradeOutcome::no_band:
        text.sentence(
            fmt::format("No SAE grade of engine oil has {} mm2/s at 100 °C (SAE J300, 2015).", kv100));
        break;
    case oil::GradeOutcome::ambiguous:
        text.sentence(
            fmt::format("{} mm2/s at 100 °C lies in the bands of SAE {}. The viscosity at 150 °C and "
                        "high shear decides: give it as a second figure.",
                        kv100, listed(found.candidates)));
        break;
    case oil::GradeOutcome::sheared:
        text.sentence(
            fmt::format("The viscosity at 100 °C is that of SAE {}, but {} mPa s at 150 °C and high shear "
                        "is below the least that is allowed there (SAE J300, 2015): no grade.",
                        listed(found.candidates), hths),
            Severity::caution);
        break;
    }
    return text;
}

std::string years_words(const std::vector<int>& years) {
    if (years.empty()) return "position 10 holds no year code";
    return fmt::format("{} or {}; the code comes round every 30 years", years.front(), years.back());
}

Document vin_text(const std::string& typed, const VinFindings& findings) {
    Document text;
    if (!findings.well_formed) {
        text.sentence("\"" + typed + "\" is not a VIN. " + findings.fault, Severity::caution);
        return text;
    }
    Facts facts;
    facts.lines.emplace_back("Maker code", findings.maker_code);
    facts.lines.emplace_back("Model year", years_words(findings.model_years));
    facts.lines.emplace_back("Check digit", fmt::format("{} in position 9, {} by the rule",
                                                        *findings.printed_digit, *findings.expected_digit));
    text.sentence("Well formed: 17 letters and digits, none of them I, O or Q.").facts(std::move(facts));
    if (findings.check_digit_matches) {
        text.sentence("The check digit matches (49 CFR 565).");
    } else {
        text.sentence(
            "The check digit does not match. On a bike made for the US or Canada a symbol is wrong; "
            "elsewhere position 9 may hold anything.",
            Severity::caution);
    }
    return text;
}

Object week_json(const TyreWeek& week) {
    Object object;
    object.add("year", week.year).add("week_start", week.starts).add("week_end", week.ends);
    return object;
}

std::string week_words(const TyreWeek& week, const Date& today) {
    constexpr double days_a_year = 365.25;
    const double years = days_between(week.starts, today) / days_a_year;
    return fmt::format("{} to {}, {} years ago", spelled_text(week.starts), spelled_text(week.ends),
                       decimal_from_double(years, 1).text());
}

} // namespace

CalcAnswer viscosity_index_answer(const Decimal& kv40_mm2_s, const Decimal& kv100_mm2_s,
                                  const oil::ViscosityIndex& index) {
    const Decimal exact = decimal_from_double(index.exact, 2);
    Object json = document::result();
    json.add("viscosity_index", index.whole).add("viscosity_index_unrounded", exact);
    json.add("kv40_mm2_s", kv40_mm2_s).add("kv100_mm2_s", kv100_mm2_s);
    Document text;
    text.sentence(
        fmt::format("Viscosity index {} ({} before rounding; ASTM D2270), from {} mm2/s at 40 °C and {} "
                    "mm2/s at 100 °C.",
                    index.whole, exact.text(), kv40_mm2_s.text(), kv100_mm2_s.text()));
    return {std::move(json), std::move(text)};
}

CalcAnswer grade_answer(const Decimal& kv100_mm2_s, const std::optional<Decimal>& hths_mpa_s,
                        const oil::HotGrade& found) {
    Array candidates;
    for (const int grade : found.candidates)
        candidates.emplace_back(std::to_string(grade));
    Object json = document::result();
    json.add("grade", found.grade ? Value(std::to_string(*found.grade)) : Value());
    json.add("candidates", std::move(candidates)).add("outcome", slug_of(found.outcome));
    json.add("only_beside_0w_5w_10w", found.light_winter_only);
    json.add("kv100_mm2_s", kv100_mm2_s).add("hths_mpa_s", hths_mpa_s);
    return {std::move(json), grade_text(kv100_mm2_s.text(), hths_mpa_s ? hths_mpa_s->text() : "", found)};
}

CalcAnswer viscosity_at_answer(double celsius, double mm2_s, bool extrapolated) {
    const Decimal temperature = without_trailing_zeros(decimal_from_double(celsius, 3));
    const Decimal viscosity = decimal_from_double(mm2_s, 4);
    Object json = document::result();
    json.add("viscosity_mm2_s", viscosity)
        .add("temperature_c", temperature)
        .add("extrapolated", extrapolated);
    Document text;
    text.sentence(fmt::format("{} mm2/s at {} °C (ASTM D341).", grouped(viscosity), temperature.text()));
    if (extrapolated) {
        text.sentence(
            "That lies outside the two temperatures given: the figure rests on the equation alone, and "
            "oil with viscosity improvers may differ.",
            Severity::caution);
    }
    return {std::move(json), std::move(text)};
}

CalcAnswer vin_answer(const std::string& typed, const VinFindings& findings) {
    Array years;
    for (const int year : findings.model_years)
        years.emplace_back(year);
    Object json = document::result();
    json.add("vin", typed).add("well_formed", findings.well_formed);
    json.add("check_digit_matches", findings.check_digit_matches).add("valid", findings.valid());
    json.add("expected_check_digit",
             findings.expected_digit ? Value(std::string(1, *findings.expected_digit)) : Value());
    json.add("maker_code", findings.well_formed ? Value(findings.maker_code) : Value());
    json.add("model_years", std::move(years));
    json.add("fault", findings.well_formed ? Value() : Value(findings.fault));
    return {std::move(json), vin_text(typed, findings)};
}

CalcAnswer tyre_date_answer(const std::string& code, const TyreDate& made, const Date& today) {
    const bool certain = made.weeks.size() == 1;
    const TyreWeek& first = made.weeks.front();
    Array candidates;
    for (const TyreWeek& week : made.weeks)
        candidates.emplace_back(week_json(week));
    Object json = document::result();
    json.add("code", code).add("week", made.week);
    json.add("year", certain ? Value(first.year) : Value());
    json.add("week_start", certain ? Value(first.starts) : Value());
    json.add("week_end", certain ? Value(first.ends) : Value());
    json.add("candidates", std::move(candidates));
    Document text;
    if (certain) {
        text.sentence(
            fmt::format("Made in week {} of {}: {}.", made.week, first.year, week_words(first, today)));
    } else {
        text.sentence("Three digits leave the decade open. The tyre was made in one of these weeks:");
        Facts facts;
        for (const TyreWeek& week : made.weeks) {
            facts.lines.emplace_back(std::to_string(week.year), week_words(week, today));
        }
        text.facts(std::move(facts));
    }
    text.sentence(
        "Common practice, no source: have tyres looked at every year from their fifth year, and replace "
        "them by their tenth. Follow the maker's handbook and local rules; if unsure, a qualified "
        "mechanic.");
    return {std::move(json), std::move(text)};
}

CalcAnswer consumption_answer(const Consumption& consumption) {
    struct Line {
        const char* key;
        ConsumptionUnit unit;
    };
    constexpr std::array lines{
        Line{"l_per_100km", ConsumptionUnit::l_per_100km}, Line{"km_per_l", ConsumptionUnit::km_per_l},
        Line{"mpg_us", ConsumptionUnit::mpg_us}, Line{"mpg_imp", ConsumptionUnit::mpg_imp}};
    Object json = document::result();
    Facts facts;
    for (const auto& [key, unit] : lines) {
        json.add(key, without_trailing_zeros(decimal_from_double(consumption.in(unit), 6)));
        facts.lines.emplace_back(std::string(symbol(unit)),
                                 grouped(decimal_from_double(consumption.in(unit), 2)));
    }
    Document text;
    text.facts(std::move(facts));
    return {std::move(json), std::move(text)};
}

} // namespace sumpbook::compose
