// SPDX-License-Identifier: GPL-3.0-or-later
#include "embedded/element_sources_csv.h"
#include "embedded/methods_csv.h"
#include "embedded/patterns_csv.h"
#include "embedded/precision_csv.h"
#include "embedded/profiles_csv.h"
#include "model/oil/limit_sets.h"
#include "model/oil/profiles.h"
#include "model/oil/quantities.h"
#include "model/quantity/data_table.h"
#include "tests/catch.h"

using namespace sumpbook;
using namespace sumpbook::oil;

TEST_CASE("Every limit names its source, its evidence and a known quantity", "[oil]") {
    std::size_t rows = 0;
    for (const LimitSet& set : limit_sets()) {
        INFO(set.id);
        CHECK_FALSE(set.source.empty());
        CHECK_FALSE(set.evidence.empty());
        CHECK_FALSE(set.title.empty());
        for (const LimitRule& rule : set.rules) {
            INFO(rule.quantity);
            CHECK((rule.quantity == "kv" || find_quantity(rule.quantity) != nullptr));
            for (const LimitRow& row : rule.rows) {
                ++rows;
                CHECK_FALSE(row.source.empty());
                CHECK_FALSE(row.evidence.empty());
                CHECK_FALSE(row.level.empty());
                CHECK(row.ladder != Ladder::unrated);
            }
        }
    }
    CHECK(rows > 150);
}

TEST_CASE("Every row of the other data files of oil names its source", "[oil]") {
    for (const auto& csv : {data::element_sources_csv(), data::methods_csv(), data::patterns_csv(),
                            data::precision_csv(), data::profiles_csv()}) {
        const auto rows = read_data_table(csv);
        CHECK_FALSE(rows.empty());
        for (const DataRow& row : rows)
            CHECK_FALSE(row["source"].empty());
    }
}

TEST_CASE("Levels stand from mild to severe, in one unit", "[oil]") {
    for (const LimitSet& set : limit_sets()) {
        for (const LimitRule& rule : set.rules) {
            INFO(set.id << " " << rule.quantity);
            for (std::size_t i = 1; i < rule.rows.size(); ++i) {
                CHECK(rule.rows[i].unit == rule.rows[0].unit);
                if (!rule.is_range()) CHECK(rule.rows[i].ladder >= rule.rows[i - 1].ladder);
                if (rule.offends_upwards_only()) CHECK(rule.rows[i].value >= rule.rows[i - 1].value);
            }
        }
    }
}

TEST_CASE("Profiles name sets that speak of the quantity and can be chosen", "[oil]") {
    CHECK(profiles().size() >= 4);
    for (const Profile& profile : profiles()) {
        CHECK_FALSE(profile.set_of.empty());
        for (const auto& [quantity, id] : profile.set_of) {
            INFO(profile.name << " " << quantity);
            const LimitSet* set = find_limit_set(id);
            REQUIRE(set != nullptr);
            CHECK(set->can_be_chosen());
            CHECK(find_quantity(quantity) != nullptr);
            CHECK((id == grade_set || set->has(quantity)));
        }
    }
}

TEST_CASE("A profile is found by name, a set stands for all it covers", "[oil]") {
    CHECK(default_profile().name == "motorcycle");
    CHECK_FALSE(find_profile("motorcycle")->chosen);
    CHECK(find_profile("IO360")->name == "io360");
    CHECK(find_profile("io360")->chosen);
    const Profile piel = find_profile("piel").value();
    CHECK(piel.chosen);
    CHECK(set_in(piel, "insolubles") == std::optional<std::string>("PIEL"));
    CHECK_FALSE(set_in(piel, "Fe").has_value());
    CHECK(find_profile("nowhere").error().sentence.find("motorcycle") != std::string::npos);
    CHECK(find_profile("GRADE").has_value() == false);
}
