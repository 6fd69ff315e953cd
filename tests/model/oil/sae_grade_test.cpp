// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/oil/sae_grade.h"

#include "tests/catch.h"

using namespace sumpbook;
using namespace sumpbook::oil;

namespace {

Decimal number(const char* text) { return Decimal::parse(text).value(); }
SaeGrade grade(const char* text) { return read_sae_grade(text).value(); }

} // namespace

TEST_CASE("a grade is read however it stands on the can", "[grade]") {
    for (const char* text : {"10W-40", "10w40", "SAE 10W-40", "sae10w/40", " 10 W 40 ", "10W\u201340"}) {
        INFO(text);
        CHECK(grade(text) == SaeGrade{10, 40});
    }
    CHECK(grade("SAE 50") == SaeGrade{{}, 50});
    CHECK(grade("50") == SaeGrade{{}, 50});
    CHECK(grade("20W50") == SaeGrade{20, 50});
    CHECK(grade("0W-8") == SaeGrade{0, 8});
    CHECK(grade("5W") == SaeGrade{5, {}});
}

TEST_CASE("what the standard does not have is refused as typed", "[grade]") {
    for (const char* text : {"", "SAE", "W40", "10W-45", "12W-40", "70", "10W-", "10W-40 MA2", "10-40", "-40",
                             "10W-400", "5W30W", "ISO VG 46"}) {
        INFO(text);
        const auto read = read_sae_grade(text);
        REQUIRE_FALSE(read.has_value());
        CHECK(read.error().place.text == text);
    }
}

TEST_CASE("a grade prints the way it is written", "[grade]") {
    CHECK(text_of(grade("sae 10w40")) == "10W-40");
    CHECK(text_of(grade("SAE 50")) == "50");
    CHECK(text_of(grade("5w")) == "5W");
}

TEST_CASE("the band of a grade is that of its hot part", "[grade]") {
    CHECK(band_of(grade("10W-40")) == ViscosityBand{number("12.5"), number("16.3")});
    CHECK(band_of(grade("SAE 40")) == band_of(grade("10W-40")));
    CHECK(band_of(grade("15W")) == ViscosityBand{number("5.6"), std::nullopt});
    CHECK_FALSE(band_of(SaeGrade{10, 45}).has_value());
    CHECK_FALSE(band_of(SaeGrade{}).has_value());
}

TEST_CASE("the middle of a band is exact", "[grade]") {
    CHECK(middle_mm2_s(*band_of(grade("10W-40"))) == number("14.4"));
    CHECK(middle_mm2_s(*band_of(grade("5W-30"))) == number("10.9"));
    CHECK_FALSE(middle_mm2_s(*band_of(grade("5W"))).has_value());
}

TEST_CASE("a band holds its lower end and not its upper one", "[grade]") {
    const auto band = band_of(grade("10W-40")).value();
    CHECK(position_in(band, number("12.4999")) == BandPosition::below);
    CHECK(position_in(band, number("12.5")) == BandPosition::inside);
    CHECK(position_in(band, number("16.2999")) == BandPosition::inside);
    CHECK(position_in(band, number("16.3")) == BandPosition::above);
    CHECK(position_in(*band_of(grade("5W")), number("99")) == BandPosition::inside);
}

TEST_CASE("SAE 40 needs less at high shear beside the lighter winter grades", "[grade]") {
    for (const char* light : {"0W-40", "5W-40", "10W-40"})
        CHECK(least_hths_mpa_s(grade(light)) == number("3.5"));
    for (const char* other : {"15W-40", "20W-40", "25W-40", "40"}) {
        CHECK(least_hths_mpa_s(grade(other)) == number("3.7"));
    }
    CHECK(least_hths_mpa_s(grade("10W-30")) == number("2.9"));
    CHECK_FALSE(least_hths_mpa_s(grade("10W")).has_value());
}

TEST_CASE("where bands overlap and high shear is not known the grade is ambiguous", "[grade]") {
    const HotGrade seven = classify(number("7.0"));
    CHECK(seven.outcome == GradeOutcome::ambiguous);
    CHECK_FALSE(seven.grade.has_value());
    CHECK(seven.candidates == std::vector<int>{12, 16, 20});
    CHECK(classify(number("4.99")).grade == 8);
    CHECK(classify(number("5.0")).candidates == std::vector<int>{8, 12});
    CHECK(classify(number("8.1999")).candidates == std::vector<int>{16, 20});
    CHECK(classify(number("8.2")).grade == 20);
}

TEST_CASE("a viscosity outside every band has no grade and no candidates", "[grade]") {
    for (const char* viscosity : {"3.999", "26.1", "0", "-3", "500"}) {
        const HotGrade none = classify(number(viscosity));
        CHECK(none.outcome == GradeOutcome::no_band);
        CHECK_FALSE(none.grade.has_value());
        CHECK(none.candidates.empty());
    }
}

TEST_CASE("an oil too thin at high shear for its band has no grade, the bands are named", "[grade]") {
    const HotGrade sheared = classify(number("13"), number("3.49"));
    CHECK(sheared.outcome == GradeOutcome::sheared);
    CHECK_FALSE(sheared.grade.has_value());
    CHECK(sheared.candidates == std::vector<int>{40});
    CHECK(classify(number("13"), number("3.5")).grade == 40);
    CHECK(classify(number("13"), number("3.5")).light_winter_only);
    CHECK_FALSE(classify(number("13"), number("3.7")).light_winter_only);
}

TEST_CASE("the grade of a reference oil is the higher of two that hold it", "[grade]") {
    CHECK(grade_holding(number("7.0")) == 20);
    CHECK(grade_holding(number("6.89")) == 16);
    CHECK(grade_holding(number("14.4")) == 40);
    CHECK_FALSE(grade_holding(number("3.9")).has_value());
}

TEST_CASE("winter grades promise figures in the cold", "[grade]") {
    CHECK(cold_limits(10)->cranking_max_mpa_s == Decimal{7000});
    CHECK(cold_limits(10)->cranking_celsius == Decimal{-25});
    CHECK_FALSE(cold_limits(12).has_value());
}
