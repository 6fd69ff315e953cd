// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/garage/vin.h"

#include "embedded/vin_csv.h"
#include "model/quantity/data_table.h"

#include <algorithm>
#include <array>
#include <map>

namespace sumpbook {
namespace {

constexpr std::size_t vin_length = 17;
constexpr int years_in_a_cycle = 30;

struct VinTables {
    std::map<char, int> value_of;
    std::array<int, vin_length> weight_at{};
    std::map<char, int> first_year_of;
};

const VinTables& tables() {
    static const VinTables tables = [] {
        VinTables read;
        for (const DataRow& row : read_data_table(data::vin_csv())) {
            const auto value = static_cast<int>(row.required("value").coefficient());
            if (row["table"] == "value") read.value_of[row["key"].front()] = value;
            if (row["table"] == "year") read.first_year_of[row["key"].front()] = value;
            if (row["table"] == "weight") {
                read.weight_at.at(static_cast<std::size_t>(row.required("key").coefficient() - 1)) = value;
            }
        }
        return read;
    }();
    return tables;
}

std::string capitals_without_margin(std::string_view text) {
    const auto is_blank = [](char c) { return c == ' ' || c == '\t' || c == '\r' || c == '\n'; };
    while (!text.empty() && is_blank(text.front()))
        text.remove_prefix(1);
    while (!text.empty() && is_blank(text.back()))
        text.remove_suffix(1);
    std::string capitals(text);
    for (char& c : capitals) {
        if (c >= 'a' && c <= 'z') c = static_cast<char>(c - 'a' + 'A');
    }
    return capitals;
}

/// The reason why it is no vehicle identification number; empty where it is one.
std::string fault_of(const std::string& vin) {
    for (const char c : vin) {
        if (c == 'I' || c == 'O' || c == 'Q') {
            return std::string("The letter ") + c + " is never used in a VIN: it may be a " +
                   (c == 'I' ? "1." : "0.");
        }
        if (!tables().value_of.contains(c)) return "A VIN holds only letters and digits.";
    }
    if (vin.size() != vin_length) {
        return "A VIN has 17 letters and digits; this one has " + std::to_string(vin.size()) + ".";
    }
    return {};
}

int weighted_sum_of(const std::string& vin) {
    int sum = 0;
    for (std::size_t i = 0; i < vin_length; ++i)
        sum += tables().value_of.at(vin[i]) * tables().weight_at[i];
    return sum;
}

/// Position 3 is 9 for a maker of few vehicles; positions 12 to 14 then complete the code.
std::string maker_code_of(const std::string& vin) {
    return vin[2] == '9' ? vin.substr(0, 3) + "/" + vin.substr(11, 3) : vin.substr(0, 3);
}

std::vector<int> model_years_of(char code) {
    const auto found = tables().first_year_of.find(code);
    if (found == tables().first_year_of.end()) return {};
    return {found->second, found->second + years_in_a_cycle};
}

} // namespace

VinFindings inspect_vin(std::string_view text) {
    const std::string vin = capitals_without_margin(text);
    VinFindings findings;
    findings.fault = fault_of(vin);
    findings.well_formed = findings.fault.empty();
    if (!findings.well_formed) return findings;
    const int sum = weighted_sum_of(vin);
    const int rest = sum % 11;
    findings.weighted_sum = sum;
    findings.printed_digit = vin[8];
    findings.expected_digit = rest == 10 ? 'X' : static_cast<char>('0' + rest);
    findings.check_digit_matches = findings.printed_digit == findings.expected_digit;
    findings.maker_code = maker_code_of(vin);
    findings.model_years = model_years_of(vin[9]);
    findings.last_four_numeric =
        std::all_of(vin.end() - 4, vin.end(), [](char c) { return c >= '0' && c <= '9'; });
    return findings;
}

VinVerdict judge_vin(const VinFindings& findings, std::optional<bool> for_us_or_canada) {
    if (!findings.well_formed) return VinVerdict::malformed;
    if (findings.check_digit_matches) return VinVerdict::good;
    return for_us_or_canada.value_or(false) ? VinVerdict::digit_wrong : VinVerdict::digit_differs;
}

} // namespace sumpbook
