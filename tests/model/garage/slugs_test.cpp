// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/garage/slugs.h"

#include "model/garage/settings.h"
#include "tests/catch.h"

using namespace sumpbook;

TEMPLATE_TEST_CASE("words and enumerators go both ways", "", Cooling, FuelType, BlockMaterial, Bore,
                   GearboxOil, Evidence, DoneBy, CheckOutcome, LabFlag, OilUse, TopUpSide, FaultStatus,
                   RecallType, Applies, CountedFrom, PlanKind) {
    const auto words = slugs<TestType>();
    REQUIRE(words.size() >= 2);
    for (std::size_t i = 0; i < words.size(); ++i) {
        const auto value = from_slug<TestType>(words[i]);
        REQUIRE(value.has_value());
        CHECK(static_cast<std::size_t>(*value) == i);
        CHECK(slug(*value) == words[i]);
    }
}

TEST_CASE("a word is read whatever its case, and a refusal lists the known ones") {
    CHECK(from_slug<Cooling>("Liquid") == Cooling::liquid);
    const auto refused = from_slug<Cooling>("water");
    REQUIRE_FALSE(refused.has_value());
    CHECK(refused.error().sentence == "\"water\" is not one of: air, oil, liquid.");
    CHECK(refused.error().place.text == "water");
}

TEST_CASE("the owner's categories replace the default ones") {
    GarageSettings settings;
    CHECK(categories_of(settings) == default_categories());
    settings.categories = {"fun", "chores"};
    CHECK(categories_of(settings) == settings.categories);
}
