// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/garage/vin.h"

#include "tests/catch.h"

#include <string>

using namespace sumpbook;

TEST_CASE("a number that is no VIN says what is wrong with it", "[vin]") {
    CHECK(inspect_vin("1M8GDM9AXKP04278").fault == "A VIN has 17 letters and digits; this one has 16.");
    CHECK(inspect_vin("1M8GDM9AXKP0427888").fault == "A VIN has 17 letters and digits; this one has 18.");
    CHECK(inspect_vin("").fault == "A VIN has 17 letters and digits; this one has 0.");
    CHECK(inspect_vin("1M8GDM9AXKPO42788").fault == "The letter O is never used in a VIN: it may be a 0.");
    CHECK(inspect_vin("IM8GDM9AXKP042788").fault == "The letter I is never used in a VIN: it may be a 1.");
    CHECK(inspect_vin("QM8GDM9AXKP042788").fault == "The letter Q is never used in a VIN: it may be a 0.");
    CHECK(inspect_vin("1M8GDM9AXKP04-788").fault == "A VIN holds only letters and digits.");
    CHECK(inspect_vin("1M8GDM9 XKP042788").fault == "A VIN holds only letters and digits.");
}

TEST_CASE("a malformed VIN has no check digit, no year and no maker", "[vin]") {
    const VinFindings findings = inspect_vin("1M8GDM9AXKP04278");
    CHECK_FALSE(findings.well_formed);
    CHECK_FALSE(findings.valid());
    CHECK_FALSE(findings.check_digit_matches);
    CHECK_FALSE(findings.expected_digit.has_value());
    CHECK(findings.model_years.empty());
    CHECK(findings.maker_code.empty());
}

TEST_CASE("small letters and blanks round a VIN are passed over", "[vin]") {
    CHECK(inspect_vin(" 1m8gdm9axkp042788\n").valid());
}

TEST_CASE("a year code stands for two years, 30 apart", "[vin]") {
    CHECK(inspect_vin("1M8GDM9AXKP042788").model_years == std::vector<int>{1989, 2019});
    CHECK(inspect_vin("11111111111111111").model_years == std::vector<int>{2001, 2031});
    CHECK(inspect_vin("WP0ZZZ99ZUS392124").model_years.empty());
    CHECK(inspect_vin("WP0ZZZ99Z0S392124").model_years.empty());
}

TEST_CASE("the maker is in the first three symbols, with three more where the third is 9", "[vin]") {
    CHECK(inspect_vin("1M8GDM9AXKP042788").maker_code == "1M8");
    CHECK(inspect_vin("1M9GDM9AXKPABC788").maker_code == "1M9/ABC");
}

TEST_CASE("a check digit that differs is advice unless the bike is for the US or Canada", "[vin]") {
    const VinFindings european = inspect_vin("WP0ZZZ99ZTS392124");
    CHECK(european.well_formed);
    CHECK_FALSE(european.valid());
    CHECK(judge_vin(european, std::nullopt) == VinVerdict::digit_differs);
    CHECK(judge_vin(european, false) == VinVerdict::digit_differs);
    CHECK(judge_vin(european, true) == VinVerdict::digit_wrong);
    CHECK(judge_vin(inspect_vin("1M8GDM9AXKP042788"), true) == VinVerdict::good);
    CHECK(judge_vin(inspect_vin("1M8GDM9AXKP04278"), false) == VinVerdict::malformed);
}

TEST_CASE("any single wrong digit of a numeric VIN is caught by the check digit", "[vin]") {
    // weights of positions 1 to 17 but 9 and the modulus 11 have no common factor, so a digit that changes
    // by less than 11 always changes the sum
    const std::string right = "11111111111111111";
    REQUIRE(inspect_vin(right).valid());
    for (std::size_t at = 0; at < right.size(); ++at) {
        for (char digit = '0'; digit <= '9'; ++digit) {
            std::string wrong = right;
            wrong[at] = digit;
            INFO(wrong);
            CHECK(inspect_vin(wrong).valid() == (wrong == right));
        }
    }
}
