// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace sumpbook {

/// What a vehicle identification number says by itself. The number is never changed: blanks round it are
/// passed over and small letters read as capitals.
///
/// SOURCE: 49 CFR 565 (tables in vin.csv), ISO 3779 for the 17 symbols.
struct VinFindings {
    bool well_formed = false; ///< 17 letters and digits, none of them I, O or Q.
    std::string fault;        ///< Why it is not, a sentence; empty where it is.

    // The rest is only known of a well-formed number.
    std::optional<int> weighted_sum;
    std::optional<char> printed_digit;  ///< The symbol in position 9.
    std::optional<char> expected_digit; ///< Weighted sum modulo 11, X for 10.
    bool check_digit_matches = false;
    std::string maker_code;         ///< Positions 1 to 3; "1F9/ABC" for a maker of few vehicles.
    std::vector<int> model_years;   ///< Both cycles of 30 years; empty where position 10 is no year code.
    bool last_four_numeric = false; ///< As the US asks of motorcycles.

    /// Both, whatever the country.
    [[nodiscard]] bool valid() const { return well_formed && check_digit_matches; }
};

[[nodiscard]] VinFindings inspect_vin(std::string_view text);

/// What a finding means for the bike. The check digit is required in the US and Canada only; elsewhere a
/// number that misses it is ordinary.
enum class VinVerdict {
    good,
    digit_differs, ///< Advice: outside the US and Canada position 9 may hold anything.
    digit_wrong,   ///< The bike is for the US or Canada: a symbol was mistyped or the number is not genuine.
    malformed,
};
/// `for_us_or_canada` absent: not known, so advice only.
[[nodiscard]] VinVerdict judge_vin(const VinFindings& findings, std::optional<bool> for_us_or_canada);

} // namespace sumpbook
