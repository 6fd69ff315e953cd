// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/oil/sae_grade.h"

#include "embedded/sae_grade_csv.h"
#include "model/quantity/data_table.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <map>

namespace sumpbook::oil {
namespace {

struct HotLimits {
    ViscosityBand band;
    Decimal least_hths_mpa_s;
    std::optional<Decimal> least_hths_light_mpa_s; ///< Beside 0W, 5W or 10W, where it differs.

    [[nodiscard]] Decimal lowest_hths_mpa_s() const {
        return least_hths_light_mpa_s.value_or(least_hths_mpa_s);
    }
};

struct WinterLimits {
    ViscosityBand band;
    ColdLimits cold;
};

struct Standard {
    std::map<int, HotLimits> hot;
    std::map<int, WinterLimits> winter;
};

int leading_number(std::string_view text) {
    int number = 0;
    std::from_chars(text.data(), text.data() + text.size(), number);
    return number;
}

const Standard& standard() {
    static const Standard tables = [] {
        Standard read;
        for (const DataRow& row : read_data_table(data::sae_grade_csv())) {
            const int number = leading_number(row["grade"]);
            const ViscosityBand band{row.required("kv100_from"), row.number("kv100_below")};
            if (row["grade"].ends_with('W')) {
                read.winter[number] = {band,
                                       {row.required("cranking_max"), row.required("cranking_celsius"),
                                        row.required("pumping_max"), row.required("pumping_celsius")}};
            } else {
                read.hot[number] = {band, row.required("hths_min"), row.number("hths_min_light")};
            }
        }
        return read;
    }();
    return tables;
}

template <class Limits>
const Limits* find(const std::map<int, Limits>& limits, std::optional<int> number) {
    const auto found = number ? limits.find(*number) : limits.end();
    return found == limits.end() ? nullptr : &found->second;
}

/// Upper case without blanks and the word SAE: " sae 10w / 40" -> "10W/40".
std::string condensed(std::string_view text) {
    std::string condensed;
    for (const char c : text) {
        if (c == ' ' || c == '\t') continue;
        condensed += c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c;
    }
    return condensed.starts_with("SAE") ? condensed.substr(3) : condensed;
}

/// Takes one or two digits from the front.
std::optional<int> take_number(std::string_view& rest) {
    std::size_t digits = 0;
    while (digits < rest.size() && digits < 2 && rest[digits] >= '0' && rest[digits] <= '9')
        ++digits;
    if (digits == 0) return std::nullopt;
    const int number = leading_number(rest.substr(0, digits));
    rest.remove_prefix(digits);
    return number;
}

void skip_joint(std::string_view& rest) {
    constexpr std::string_view en_dash = "\u2013";
    if (rest.starts_with('-') || rest.starts_with('/')) {
        rest.remove_prefix(1);
    } else if (rest.starts_with(en_dash)) {
        rest.remove_prefix(en_dash.size());
    }
}

/// The parts of a condensed grade name, known to the standard or not.
std::optional<SaeGrade> split(std::string_view rest) {
    SaeGrade grade;
    const auto first = take_number(rest);
    if (!first) return std::nullopt;
    if (!rest.starts_with('W')) {
        grade.hot = first;
        return rest.empty() ? std::optional(grade) : std::nullopt;
    }
    grade.winter = first;
    rest.remove_prefix(1);
    if (rest.empty()) return grade;
    skip_joint(rest);
    grade.hot = take_number(rest);
    return grade.hot && rest.empty() ? std::optional(grade) : std::nullopt;
}

} // namespace

std::string text_of(const SaeGrade& grade) {
    if (grade.winter && grade.hot) return fmt::format("{}W-{}", *grade.winter, *grade.hot);
    if (grade.winter) return fmt::format("{}W", *grade.winter);
    return grade.hot ? fmt::format("{}", *grade.hot) : std::string{};
}

Result<SaeGrade> read_sae_grade(std::string_view text) {
    const auto grade = split(condensed(text));
    const bool known = grade && (!grade->winter || find(standard().winter, grade->winter)) &&
                       (!grade->hot || find(standard().hot, grade->hot));
    if (known) return *grade;
    return refuse(
        fmt::format("\"{}\" is not an SAE grade of engine oil. Write it as on the can, such as 10W-40, "
                    "5W or SAE 50: 0W, 5W, 10W, 15W, 20W or 25W, and 8, 12, 16, 20, 30, 40, 50 or 60.",
                    text),
        {.file = {}, .line = {}, .column = {}, .text = std::string(text)});
}

std::optional<ViscosityBand> band_of(const SaeGrade& grade) {
    if (const auto* hot = find(standard().hot, grade.hot)) return hot->band;
    if (grade.hot) return std::nullopt;
    if (const auto* winter = find(standard().winter, grade.winter)) return winter->band;
    return std::nullopt;
}

std::optional<Decimal> middle_mm2_s(const ViscosityBand& band) {
    if (!band.below_mm2_s) return std::nullopt;
    const auto sum = add(band.from_mm2_s, *band.below_mm2_s);
    const auto middle = sum ? multiply(*sum, Decimal{5, 1}) : sum;
    return middle ? std::optional(*middle) : std::nullopt;
}

BandPosition position_in(const ViscosityBand& band, const Decimal& kv100_mm2_s) {
    if (kv100_mm2_s < band.from_mm2_s) return BandPosition::below;
    if (band.below_mm2_s && kv100_mm2_s >= *band.below_mm2_s) return BandPosition::above;
    return BandPosition::inside;
}

std::optional<Decimal> least_hths_mpa_s(const SaeGrade& grade) {
    const auto* hot = find(standard().hot, grade.hot);
    if (!hot) return std::nullopt;
    const bool light = grade.winter && *grade.winter <= 10;
    return light ? hot->lowest_hths_mpa_s() : hot->least_hths_mpa_s;
}

std::optional<ColdLimits> cold_limits(int winter) {
    const auto* limits = find(standard().winter, winter);
    return limits ? std::optional(limits->cold) : std::nullopt;
}

HotGrade classify(const Decimal& kv100_mm2_s, const std::optional<Decimal>& hths_mpa_s) {
    HotGrade finding;
    for (const auto& [number, limits] : standard().hot) {
        if (position_in(limits.band, kv100_mm2_s) != BandPosition::inside) continue;
        finding.candidates.push_back(number);
        if (hths_mpa_s && *hths_mpa_s < limits.lowest_hths_mpa_s()) continue;
        finding.grade = number;
        finding.light_winter_only = hths_mpa_s && *hths_mpa_s < limits.least_hths_mpa_s;
    }
    if (finding.candidates.empty()) return finding;
    finding.outcome = finding.grade ? GradeOutcome::found : GradeOutcome::sheared;
    if (!hths_mpa_s && finding.candidates.size() > 1) {
        finding.grade.reset();
        finding.outcome = GradeOutcome::ambiguous;
    }
    return finding;
}

std::optional<int> grade_holding(const Decimal& kv100_mm2_s) {
    const auto holding = classify(kv100_mm2_s).candidates;
    return holding.empty() ? std::nullopt : std::optional(holding.back());
}

} // namespace sumpbook::oil
