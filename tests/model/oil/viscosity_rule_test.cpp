// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/oil/viscosity_rule.h"
#include "tests/model/oil/oil_garage.h"

#include "tests/catch.h"

using namespace sumpbook;
using namespace sumpbook::oil;
using namespace sumpbook::oil::testing;

TEST_CASE("In grade the change decides", "[oil]") {
    const auto at = [](const char* used) { return viscosity_ladder(number("10"), number(used), true); };
    CHECK(at("9.001") == Ladder::within);
    CHECK(at("9") == Ladder::watch);
    CHECK(at("8.001") == Ladder::watch);
    CHECK(at("8") == Ladder::act);
    CHECK(at("11.999") == Ladder::within);
    CHECK(at("12") == Ladder::act);
}

TEST_CASE("Out of grade a small change is watched, a large one acted on", "[oil]") {
    const auto at = [](const char* used) { return viscosity_ladder(number("10"), number(used), false); };
    CHECK(at("9.001") == Ladder::watch);
    CHECK(at("9") == Ladder::act);
    CHECK(at("11.999") == Ladder::watch);
    CHECK(at("12") == Ladder::act);
}

TEST_CASE("Where the grade cannot be seen the change decides as if in grade", "[oil]") {
    CHECK(viscosity_ladder(number("100"), number("91"), std::nullopt) == Ladder::within);
    CHECK(viscosity_ladder(number("100"), number("90"), std::nullopt) == Ladder::watch);
    CHECK(viscosity_ladder(number("100"), number("80"), std::nullopt) == Ladder::act);
}

TEST_CASE("Viscosity at 100 C decides over the one at 40 C", "[oil]") {
    OilGarage garage;
    garage.new_oil("2024-01-01", {value("kv100", "14.0"), value("kv40", "100")});
    garage.fill("2024-01-02");
    garage.draw("2024-06-01", {value("kv100", "13.5"), value("kv40", "70")});
    const SampleAssessment found = garage.assess();
    CHECK(rated(found, "kv100").ladder == Ladder::within);
    CHECK(rated(found, "kv40").unrated == Unrated::judged_elsewhere);
    REQUIRE(found.viscosity.change_percent);
    CHECK(*found.viscosity.change_percent == Approx(-3.571428));
    CHECK(found.viscosity.reference == "the new oil's own sample N1");
    REQUIRE(found.viscosity.index);
}

TEST_CASE("Without viscosity at 100 C the one at 40 C is judged by its change", "[oil]") {
    OilGarage garage;
    garage.new_oil("2024-01-01", {value("kv40", "100")});
    garage.fill("2024-01-02");
    garage.draw("2024-06-01", {value("kv40", "88")});
    const SampleAssessment found = garage.assess();
    CHECK(rated(found, "kv40").ladder == Ladder::watch);
    CHECK_FALSE(rated(found, "kv40").notes.empty());
    CHECK(found.viscosity.judged_at == ViscosityAt::celsius_40);
}

TEST_CASE("The middle of the recorded grade stands in for an unknown new oil", "[oil]") {
    OilGarage garage;
    garage.fill("2024-01-02", "10W-40");
    garage.draw("2024-06-01", {value("kv100", "12.4")}); // middle 14.4: -13.9 % and out of grade
    const SampleAssessment found = garage.assess();
    CHECK(rated(found, "kv100").ladder == Ladder::act);
    CHECK(found.viscosity.reference.find("middle of SAE 10W-40") != std::string::npos);
    CHECK(found.viscosity.in_band == BandPosition::below);
    CHECK_FALSE(found.viscosity.petrol.has_value());   // no estimate from a reference nobody measured
    CHECK(found.viscosity.below_shear_floor == false); // 12.0 for xW-40
}

TEST_CASE("Without a recorded grade the new oil's viscosity names it, the higher where two overlap",
          "[oil]") {
    OilGarage garage;
    garage.new_oil("2024-01-01", {value("kv100", "7.0")}); // SAE 12 and 20 overlap here, 16 as well
    garage.fill("2024-01-02", std::nullopt);
    garage.draw("2024-06-01", {value("kv100", "6.5")}); // -7.1 %, below the band of SAE 20
    const SampleAssessment found = garage.assess();
    CHECK(text_of(*found.viscosity.grade) == "20");
    CHECK_FALSE(found.viscosity.grade_is_recorded);
    CHECK(rated(found, "kv100").ladder == Ladder::watch);
}

TEST_CASE("Without any reference viscosity is not judged", "[oil]") {
    OilGarage garage;
    garage.fill("2024-01-02", std::nullopt);
    garage.draw("2024-06-01", {value("kv100", "13")});
    const SampleAssessment found = garage.assess();
    CHECK(rated(found, "kv100").unrated == Unrated::no_reference);
    CHECK_FALSE(found.viscosity.change_percent.has_value());
}

TEST_CASE("A petrol engine's thinned oil gives a range of petrol", "[oil]") {
    OilGarage garage;
    garage.new_oil("2024-01-01", {value("kv100", "14.0")});
    garage.fill("2024-01-02");
    garage.draw("2024-06-01", {value("kv100", "12.6")});
    const auto petrol = garage.assess().viscosity.petrol;
    REQUIRE(petrol);
    CHECK(petrol->lowest_percent > 0);
    CHECK(petrol->lowest_percent < petrol->highest_percent);
    garage.details().fuel = FuelType::diesel;
    CHECK_FALSE(garage.assess().viscosity.petrol.has_value());
}
