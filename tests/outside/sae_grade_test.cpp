// SPDX-License-Identifier: GPL-3.0-or-later
// Engine-oil grades against SAE J300 (2015-01-20) and JASO T 903 as reproduced at the addresses in the
// tables.
#include "model/oil/sae_grade.h"
#include "model/oil/sae_grade_shear.h"

#include "tests/catch.h"
#include "tests/outside/check_table.h"
#include "tests/outside/numbers.h"

using namespace sumpbook;
using namespace sumpbook::outside;
using namespace sumpbook::oil;

namespace {

Decimal decimal(const std::string& text) { return Decimal::parse(text).value(); }

/// "40 (with 0W 5W 10W)" stands for one grade with each partner named, "monograde" for none.
std::vector<SaeGrade> grades_of(const std::string& cell) {
    if (cell.find("with") == std::string::npos) return {read_sae_grade(cell).value()};
    std::vector<SaeGrade> grades;
    const auto numbers = numbers_in(cell);
    for (std::size_t i = 1; i < numbers.size(); ++i) {
        grades.push_back({static_cast<int>(numbers[i]), static_cast<int>(numbers[0])});
    }
    if (cell.find("monograde") != std::string::npos) grades.push_back({{}, static_cast<int>(numbers[0])});
    return grades;
}

} // namespace

TEST_CASE("every grade of J300", "[outside][grade]") {
    for (const CheckRow& row : check_table("std-j300.csv")) {
        TESTING_ROW(row);
        for (const SaeGrade& grade : grades_of(row["grade"])) {
            const auto band = band_of(grade).value();
            CHECK(band.from_mm2_s == decimal(row["kv100_min_mm2s"]));
            CHECK(band.below_mm2_s.has_value() != row.empty("kv100_max_excl_mm2s"));
            if (band.below_mm2_s) CHECK(*band.below_mm2_s == decimal(row["kv100_max_excl_mm2s"]));
            CHECK(least_hths_mpa_s(grade).has_value() != row.empty("hths150_min_mPas"));
            if (const auto least = least_hths_mpa_s(grade)) CHECK(*least == decimal(row["hths150_min_mPas"]));
            if (row.empty("ccs_max_mPas")) continue;
            const auto cold = cold_limits(grade.winter.value()).value();
            CHECK(cold.cranking_max_mpa_s == decimal(row["ccs_max_mPas"]));
            CHECK(cold.cranking_celsius == decimal(row["ccs_temp_C"]));
            CHECK(cold.pumping_max_mpa_s == decimal(row["mrv_max_mPas"]));
            CHECK(cold.pumping_celsius == decimal(row["mrv_temp_C"]));
        }
    }
}

TEST_CASE("grades of measured oils", "[outside][grade]") {
    for (const CheckRow& row : check_table("std-j300-grade-cases.csv")) {
        TESTING_ROW(row);
        const HotGrade found = classify(decimal(row["kv100"]), decimal(row["hths150"]));
        if (row["expected_hot_grade"] == "none") {
            CHECK_FALSE(found.grade.has_value());
            continue;
        }
        CHECK(found.grade == static_cast<int>(numbers_in(row["expected_hot_grade"]).front()));
        const bool light_only = row["expected_hot_grade"].find("0W/5W/10W") != std::string::npos;
        CHECK(found.light_winter_only == light_only);
    }
}

TEST_CASE("what editions since 2007 changed is in force", "[outside][grade]") {
    const auto tested = [](const char* key) -> const CheckRow& {
        const CheckRow& row = check_row("std-j300-history.csv", key);
        row.count_as_tested();
        return row;
    };
    const CheckRow& forty = tested("2007-11-06 | SAE 0W-40 5W-40 10W-40 HTHS minimum raised");
    for (const int winter : {0, 5, 10}) {
        CHECK(least_hths_mpa_s({winter, 40})->to_double() == numbers_in(forty["value_new"]).front());
    }
    const CheckRow& twenty = tested("2013-04-02 | SAE 16 added (HTHS 2.3); SAE 20 KV100 minimum raised");
    CHECK(least_hths_mpa_s({{}, 16}) == decimal("2.3"));
    CHECK(band_of({{}, 20})->from_mm2_s.to_double() == numbers_in(twenty["value_new"]).front());
    tested("2015-01-20 | SAE 12 (HTHS 2.0) and SAE 8 (HTHS 1.7) added; KV100 ranges of low grades overlap; "
           "choosing one grade is covered in Section 6");
    CHECK(least_hths_mpa_s({{}, 12}) == decimal("2.0"));
    CHECK(least_hths_mpa_s({{}, 8}) == decimal("1.7"));
    CHECK(classify(decimal("5.5")).outcome == GradeOutcome::ambiguous);
    tested("2021-04-30 | edition exists; grades 0W-25W 8 12 16 20 30 40 50 60");
    for (const char* name :
         {"0W", "5W", "10W", "15W", "20W", "25W", "8", "12", "16", "20", "30", "40", "50", "60"}) {
        CHECK(read_sae_grade(name).has_value());
    }
}

TEST_CASE("a used 10W-40 in and out of its grade", "[outside][grade]") {
    const CheckRow& row = check_row("oil-worked-checks.csv", "C11");
    TESTING_ROW(row);
    CHECK(row["expected"] == "below grade; in grade; above grade");
    const auto band = band_of({10, 40}).value();
    CHECK(position_in(band, decimal("12.49")) == BandPosition::below);
    CHECK(position_in(band, decimal("12.50")) == BandPosition::inside);
    CHECK(position_in(band, decimal("16.30")) == BandPosition::above);
}

TEST_CASE("floors after shear of JASO T 903", "[outside][grade]") {
    for (const CheckRow& row : check_table("std-jaso-physchem.csv")) {
        if (!row["property"].starts_with("KV100 after shear")) continue;
        TESTING_ROW(row);
        if (row["limit_2016"] == "stay in grade") {
            CHECK(after_shear_floor_mm2_s({20, 60}) == band_of({20, 60})->from_mm2_s);
            CHECK(after_shear_floor_mm2_s({0, 20}) == band_of({0, 20})->from_mm2_s);
            continue;
        }
        const int hot = static_cast<int>(numbers_in(row["property"]).back()) * -1; // "xW-30" reads as -30
        for (const char* edition : {"limit_2016", "limit_2023"}) {
            CHECK(after_shear_floor_mm2_s({10, hot})->to_double() == numbers_in(row[edition]).front());
        }
    }
}
