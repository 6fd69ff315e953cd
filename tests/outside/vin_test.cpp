// SPDX-License-Identifier: GPL-3.0-or-later
// Vehicle identification numbers against 49 CFR 565 and published specimens; sources stand in the tables.
#include "model/garage/vin.h"

#include "tests/catch.h"
#include "tests/outside/check_table.h"

using namespace sumpbook;
using namespace sumpbook::outside;

TEST_CASE("published VINs pass and fail as they should", "[outside][vin]") {
    for (const CheckRow& row : check_table("std-vin-examples.csv")) {
        TESTING_ROW(row);
        const VinFindings findings = inspect_vin(row["vin"]);
        CHECK(findings.well_formed != row.empty("weighted_sum"));
        CHECK(findings.valid() == (row["passes"] == "yes"));
        if (!findings.well_formed) continue;
        CHECK(findings.weighted_sum == static_cast<int>(row.number("weighted_sum")));
        CHECK(std::string(1, findings.expected_digit.value()) == row["computed_digit"]);
        CHECK(std::string(1, findings.printed_digit.value()) == row["printed_digit"]);
    }
}

TEST_CASE("values of letters, 49 CFR 565 Table III", "[outside][vin]") {
    for (const CheckRow& row : check_table("std-vin-translit.csv")) {
        TESTING_ROW(row);
        const VinFindings findings = inspect_vin(row["char"] + "1111111111111111");
        CHECK(findings.well_formed == (row["value"] != "not allowed"));
        // position 1 weighs 8, the sixteen ones behind it 89 - 8
        if (findings.well_formed)
            CHECK(findings.weighted_sum == static_cast<int>(8 * row.number("value")) + 81);
    }
}

TEST_CASE("weights of positions, 49 CFR 565 Table IV", "[outside][vin]") {
    for (const CheckRow& row : check_table("std-vin-weights.csv")) {
        TESTING_ROW(row);
        std::string vin(17, '0');
        vin[static_cast<std::size_t>(row.number("position")) - 1] = '1';
        CHECK(inspect_vin(vin).weighted_sum == static_cast<int>(row.number("weight")));
    }
}

TEST_CASE("model-year codes of both cycles", "[outside][vin]") {
    for (const CheckRow& row : check_table("std-vin-year-codes.csv")) {
        TESTING_ROW(row);
        std::string vin(17, '1');
        vin[9] = row["code"].front();
        const auto years = inspect_vin(vin).model_years;
        if (row.empty("year_cycle1")) {
            CHECK(years.empty());
        } else {
            CHECK(years == std::vector<int>{static_cast<int>(row.number("year_cycle1")),
                                            static_cast<int>(row.number("year_cycle2"))});
        }
    }
}

TEST_CASE("rules about VINs", "[outside][vin]") {
    const auto tested = [](const char* start) {
        for (const CheckRow& row : check_table("std-vin-rules.csv")) {
            if (!row["rule"].starts_with(start)) continue;
            row.count_as_tested();
            return;
        }
        FAIL("no rule begins with " << start);
    };
    const VinFindings right = inspect_vin("1M8GDM9AXKP042788");
    const VinFindings european = inspect_vin("WP0ZZZ99ZTS392124");

    tested("17 characters; letters I O Q never used");
    CHECK_FALSE(inspect_vin("1M8GDM9AXKP04278").well_formed);
    CHECK_FALSE(inspect_vin("1M8GDM9AXKP0427888").well_formed);
    for (const char letter : {'I', 'O', 'Q'}) {
        CHECK_FALSE(inspect_vin(std::string(1, letter) + "M8GDM9AXKP042788").well_formed);
    }
    tested("check digit required in position 9 of every US-market VIN");
    CHECK(judge_vin(european, true) == VinVerdict::digit_wrong);
    tested("check digit is used for all road vehicles sold in the United States and Canada");
    CHECK(judge_vin(right, true) == VinVerdict::good);
    CHECK(judge_vin(european, false) == VinVerdict::digit_differs);
    tested("position 10 is the model year, 30-year cycle");
    CHECK(right.model_years == std::vector<int>{1989, 2019});
    tested("position 7 numeric means 1980-2009");
    CHECK(inspect_vin("1M8GDM9AXKP042788").model_years == inspect_vin("1M8GDMAAXKP042788").model_years);
    tested("third character 9 marks a maker of few vehicles");
    CHECK(inspect_vin("1M9GDM9AXKPABC788").maker_code == "1M9/ABC");
    tested("last 4 characters numeric for motorcycles");
    CHECK(right.last_four_numeric);
    CHECK_FALSE(inspect_vin("1M8GDM9AXKP04A788").last_four_numeric);
}
