// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/oil/rate_value.h"
#include "tests/model/oil/oil_garage.h"

#include "tests/catch.h"

using namespace sumpbook;
using namespace sumpbook::oil;
using namespace sumpbook::oil::testing;

namespace {

RatingBasis basis(const std::vector<SampleValue>& fresh = {}, const char* profile = "motorcycle") {
    RatingBasis made;
    made.profile = find_profile(profile).value();
    made.engine.fuel = FuelType::petrol;
    if (!fresh.empty()) made.reference.sample = "N1";
    made.reference.values = fresh;
    return made;
}

} // namespace

TEST_CASE("Nickel has no published limit and stays unrated", "[oil]") {
    const RatedValue nickel = rate_value(value("Ni", "30"), basis());
    CHECK(nickel.ladder == Ladder::unrated);
    CHECK(nickel.unrated == Unrated::no_limit);
    CHECK(nickel.set.empty());
}

TEST_CASE("Lead is not judged on leaded petrol, but on a lead substitute", "[oil]") {
    RatingBasis leaded = basis();
    leaded.engine.fuel = FuelType::leaded_petrol;
    CHECK(rate_value(value("Pb", "900"), leaded).unrated == Unrated::leaded_petrol);
    leaded.engine.fuel = FuelType::petrol_with_lead_substitute;
    CHECK(rate_value(value("Pb", "26"), leaded).ladder == Ladder::act);
}

TEST_CASE("Additive metals wait for the new oil", "[oil]") {
    const SampleValue boron = value("B", "25");
    CHECK(rate_value(boron, basis()).unrated == Unrated::new_oil_unknown);
    CHECK(rate_value(boron, basis({value("B", "20")})).unrated == Unrated::in_new_oil); // equal counts
    CHECK(rate_value(boron, basis({value("B", "19.9")})).ladder == Ladder::act);
    CHECK(rate_value(boron, basis({value("B", "<5")})).ladder == Ladder::act);
    CHECK(rate_value(boron, basis({value("B", "<50")})).unrated == Unrated::new_oil_unknown);
}

TEST_CASE("Silicon counts where the new oil is not known", "[oil]") {
    CHECK(rate_value(value("Si", "21"), basis()).ladder == Ladder::act);
    CHECK(rate_value(value("Si", "21"), basis({value("Si", "20")})).unrated == Unrated::in_new_oil);
    CHECK(rate_value(value("Si", "21"), basis({value("Si", "7")})).ladder == Ladder::act);
}

TEST_CASE("Base numbers are compared within one stated method", "[oil]") {
    const auto tbn = [](const char* used, std::optional<std::string> with,
                        std::optional<std::string> fresh_with) {
        return rate_value(value("tbn", used, {}, std::move(with)),
                          basis({value("tbn", "8.0", {}, std::move(fresh_with))}));
    };
    CHECK(tbn("3.4", "ASTM D2896", "D2896-15").level == std::optional<std::string>("elevated"));
    CHECK(tbn("3.4", "ASTM D2896", "ASTM D4739").unrated == Unrated::method);
    CHECK(tbn("3.4", "ASTM D2896", std::nullopt).unrated == Unrated::method);
    CHECK(tbn("3.4", std::nullopt, std::nullopt).unrated == Unrated::method);
    CHECK(rate_value(value("tbn", "3.4", {}, "D2896"), basis()).unrated == Unrated::no_reference);
}

TEST_CASE("Water counts in per cent and in mg/kg", "[oil]") {
    CHECK(rate_value(value("water", "3000", "mg/kg"), basis()).level ==
          std::optional<std::string>("elevated"));
    CHECK(rate_value(value("water", "2999", "mg/kg"), basis()).level == std::nullopt);
    CHECK(rate_value(value("water", "0.3", "%"), basis()).level == std::optional<std::string>("elevated"));
    CHECK(rate_value(value("water", "3000", "mg/kg"), basis({}, "mtu")).unrated == Unrated::unit);
    CHECK(rate_value(value("water", "7", "drops"), basis()).unrated == Unrated::unit);
}

TEST_CASE("Soot has limits for diesels only", "[oil]") {
    CHECK(rate_value(value("soot", "6"), basis()).unrated == Unrated::other_engines);
    RatingBasis unknown = basis();
    unknown.engine.fuel.reset();
    CHECK(rate_value(value("soot", "6"), unknown).unrated == Unrated::other_engines);
    unknown.engine.fuel = FuelType::diesel;
    CHECK(rate_value(value("soot", "6"), unknown).level == std::optional<std::string>("alarm"));
}

TEST_CASE("Fuel is judged by the rows of the bike's fuel, both where it is not stated", "[oil]") {
    RatingBasis engine = basis();
    CHECK(rate_value(value("fuel", "3"), engine).ladder == Ladder::watch);
    engine.engine.fuel = FuelType::diesel;
    CHECK(rate_value(value("fuel", "3"), engine).ladder == Ladder::within);
    engine.engine.fuel.reset();
    const RatedValue both = rate_value(value("fuel", "3"), engine);
    CHECK(both.ladder == Ladder::watch);
    CHECK(both.verdicts.size() == 2);
    CHECK_FALSE(both.notes.empty());
}

TEST_CASE("What a chosen profile lacks comes from the default one, named", "[oil]") {
    const RatedValue lead = rate_value(value("Pb", "26"), basis({}, "io360"));
    CHECK(lead.set == "HB2004");
    CHECK(lead.ladder == Ladder::act);
    CHECK(lead.notes.back().find("io360") != std::string::npos);
    const RatedValue iron = rate_value(value("Fe", "100"), basis({}, "io360"));
    CHECK(iron.set == "IO360");
    CHECK(iron.level == std::optional<std::string>("marginal"));
}

TEST_CASE("A set the owner chose applies despite its scope, and says so", "[oil]") {
    const RatedValue lead = rate_value(value("Pb", "12"), basis({}, "dd"));
    CHECK(lead.set == "DD");
    CHECK(lead.ladder == Ladder::act); // the stricter of two series
    CHECK(lead.verdicts.size() == 2);
    REQUIRE(lead.notes.size() == 2);
    CHECK(lead.notes[0].find("diesel") != std::string::npos);
    CHECK(lead.notes[1].find("older series") != std::string::npos);
}

TEST_CASE("Detected glycol is judged although the chosen set wants an amount", "[oil]") {
    const RatedValue detected = rate_value(value("glycol", "detected"), basis({}, "mtu"));
    CHECK(detected.set == "HB2004");
    CHECK(detected.ladder == Ladder::act);
    const RatedValue amount = rate_value(value("glycol", "0.009", "%"), basis({}, "mtu"));
    CHECK(amount.set == "MTU");
    CHECK(amount.ladder == Ladder::watch); // 90 of 100 mg/kg
}
