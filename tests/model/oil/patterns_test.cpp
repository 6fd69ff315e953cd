// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/oil/patterns.h"
#include "tests/model/oil/oil_garage.h"

#include "tests/catch.h"

using namespace sumpbook;
using namespace sumpbook::oil;
using namespace sumpbook::oil::testing;

namespace {

using Ids = std::vector<std::string>;

Ids ids(const PatternFacts& facts) {
    Ids found;
    for (const PatternFound& pattern : find_patterns(facts))
        found.push_back(pattern.id);
    return found;
}

PatternFacts high(std::set<std::string> quantities) {
    PatternFacts facts;
    facts.high = std::move(quantities);
    return facts;
}

PatternFacts amounts(PatternFacts facts, std::map<std::string, Decimal> values) {
    facts.amounts = std::move(values);
    return facts;
}

} // namespace

TEST_CASE("Iron with chromium points at rings and cylinders", "[oil]") {
    CHECK(ids(high({"Fe", "Cr"})) == Ids{"P1"});
    CHECK(ids(high({"Fe"})).empty());
    CHECK(ids(high({})).empty());
}

TEST_CASE("Copper points at bearings alone or with iron only", "[oil]") {
    CHECK(ids(high({"Cu"})) == Ids{"P2"});
    CHECK(ids(high({"Cu", "Fe"})) == Ids{"P2"});
    CHECK(ids(high({"Cu", "Pb"})).empty());
    CHECK(ids(high({"Cu", "Pb", "Sn"})) == Ids{"P4"});
}

TEST_CASE("Silicon to aluminium tells dirt from an alloy", "[oil]") {
    const auto dirt = [](const char* si, const char* al) {
        return ids(amounts(high({"Si", "Al", "Sn"}), {{"Si", number(si)}, {"Al", number(al)}}));
    };
    CHECK(dirt("60", "20") == Ids{"P5"});
    CHECK(dirt("50", "20") == Ids{"P5"}); // 2.5 exactly
    CHECK(dirt("90", "20") == Ids{"P5"}); // 4.5 exactly
    CHECK(dirt("90.1", "20").empty());
    CHECK(dirt("49.9", "20").empty());
    CHECK(ids(amounts(high({"Si", "Al"}), {{"Si", number("60")}, {"Al", number("20")}}))
              .empty()); // no other wear metal
    CHECK(ids(amounts(high({"Si", "Al"}), {{"Si", number("20")}, {"Al", number("60")}})) == Ids{"P6"});
    CHECK(ids(amounts(high({"Si", "Al"}), {{"Si", number("20")}, {"Al", number("71")}})).empty());
}

TEST_CASE("Silicon alone that falls with each fill is sealant", "[oil]") {
    PatternFacts facts = high({"Si"});
    CHECK(ids(facts).empty());
    facts.conditions.insert("silicon-falls-each-fill");
    CHECK(ids(facts) == Ids{"P7"});
    facts.high.insert("Fe");
    CHECK(ids(facts).empty());
}

TEST_CASE("Coolant shows by its metals or by glycol, and hides the bearings pattern", "[oil]") {
    CHECK(ids(high({"Na", "K"})) == Ids{"P8"});
    CHECK(ids(high({"Na"})).empty());
    CHECK(ids(high({"Na", "B", "Cu"})) == Ids{"P8"});
    PatternFacts glycol = high({"Cu"});
    glycol.glycol_detected = true;
    CHECK(ids(glycol) == Ids{"P8"});
    PatternFacts air = high({"Na", "K"});
    air.without_coolant = true;
    CHECK(ids(air).empty());
    air.glycol_detected = true;
    CHECK(ids(air) == Ids{"P8"});
}

TEST_CASE("Thinner oil points at fuel only with a lower flash point", "[oil]") {
    PatternFacts facts;
    facts.viscosity_mm2_s = {number("10"), number("9")};
    CHECK(ids(facts).empty());
    facts.conditions.insert("flash-below-new");
    CHECK(ids(facts) == Ids{"P9"});
    facts.viscosity_mm2_s = {number("10"), number("9.01")};
    CHECK(ids(facts).empty());
    facts.viscosity_mm2_s = {number("10"), number("12.5")};
    CHECK(ids(facts) == Ids{"P10"});
}

TEST_CASE("Run-in and remarks are told apart from causes", "[oil]") {
    PatternFacts facts = high({"Cu"});
    facts.conditions = {"new-engine"};
    const auto found = find_patterns(facts);
    REQUIRE(found.size() == 2);
    CHECK(found[0].kind == PatternKind::cause);
    CHECK(found[1].id == "P12");
    CHECK(found[1].kind == PatternKind::run_in);
    PatternFacts chrome = high({"Cr"});
    chrome.conditions = {"chrome-bore-under-150-h"};
    CHECK(ids(chrome) == Ids{"P13"});
    PatternFacts fell;
    fell.conditions = {"wear-metals-fell"};
    CHECK(find_patterns(fell).at(0).kind == PatternKind::remark);
}

TEST_CASE("A pattern seen only in rising values is a remark", "[oil]") {
    PatternFacts facts;
    facts.rising = {"Fe", "Cr"};
    const auto rising = find_patterns(facts);
    REQUIRE(rising.size() == 1);
    CHECK(rising[0].kind == PatternKind::remark);
    facts.high = {"Cr"};
    CHECK(find_patterns(facts).at(0).kind == PatternKind::cause);
    CHECK_FALSE(find_patterns(facts).at(0).source.empty());
}
