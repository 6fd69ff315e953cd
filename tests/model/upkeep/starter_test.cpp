// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/upkeep/starter.h"

#include "model/upkeep/inspections.h"
#include "tests/catch.h"
#include "tests/model/bike_log.h"

#include <algorithm>
#include <set>

using namespace sumpbook;
using namespace sumpbook::testing;
using namespace sumpbook::upkeep;

namespace {

std::set<std::string> slugs(const std::vector<PlanItem>& plan) {
    std::set<std::string> found;
    for (const auto& item : plan)
        found.insert(item.slug);
    return found;
}

std::set<std::string> starter_slugs(const BikeDetails& bike, std::optional<Distance> ridden = {}) {
    return slugs(starter_plan(bike, std::nullopt, ridden));
}

} // namespace

TEST_CASE("Every item of a starter plan says that the handbook comes first, and has an interval") {
    const auto plan = starter_plan({}, std::nullopt, std::nullopt);
    CHECK(plan.size() >= 18);
    CHECK(slugs(plan).size() == plan.size());
    for (const auto& item : plan) {
        INFO(item.slug);
        CHECK(item.source->find("common practice; your handbook comes first") == 0);
        CHECK((item.first.any() || item.repeat.any()));
        CHECK_FALSE(item.label.empty());
    }
}

TEST_CASE("The plan has only what the bike has") {
    BikeDetails bike;
    CHECK(starter_slugs(bike).contains("chain-set"));
    CHECK(starter_slugs(bike).contains("coolant"));
    CHECK(starter_slugs(bike).contains("first-service"));
    CHECK_FALSE(starter_slugs(bike).contains("final-drive-oil"));
    CHECK_FALSE(starter_slugs(bike).contains("clutch-fluid"));

    bike.cooling = Cooling::air;
    bike.fuel = FuelType::diesel;
    bike.compartments = {{"final-drive", litres("0.2"), {}}, {"clutch", litres("0.1"), {}}};
    const auto other = starter_slugs(bike, Distance::from_whole_km(1601));
    for (const auto* absent :
         {"chain-set", "chain-clean", "chain-adjust", "coolant", "spark-plugs", "first-service"})
        CHECK_FALSE(other.contains(absent));
    CHECK(other.contains("final-drive-oil"));
    CHECK(other.contains("clutch-fluid"));
}

TEST_CASE("The statutory inspection of the home country joins it") {
    BikeDetails bike;
    const auto plan = starter_plan(bike, "DE", std::nullopt);
    const auto found = std::ranges::find(plan, "inspection", &PlanItem::slug);
    REQUIRE(found != plan.end());
    CHECK(found->kind == PlanKind::statutory);
    CHECK(found->first.months == 24);
    CHECK(found->repeat.months == 24);
    CHECK(found->source->find("check your authority") != std::string::npos);
    CHECK_FALSE(slugs(starter_plan(bike, "US", std::nullopt)).contains("inspection"));
}

TEST_CASE("Some countries inspect larger engines only") {
    CHECK_FALSE(statutory_inspection("JP", 250));
    CHECK(statutory_inspection("JP", 251)->first.months == 36);
    CHECK(statutory_inspection("JP", std::nullopt));
    CHECK_FALSE(statutory_inspection("ZZ", 1000));
}
