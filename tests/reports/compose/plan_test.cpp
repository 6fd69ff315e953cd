// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/plan.h"

#include "reports/write/json.h"
#include "reports/write/text.h"
#include "tests/catch.h"
#include "tests/model/bike_log.h"

#include <nlohmann/json.hpp>

using namespace sumpbook;
using namespace sumpbook::testing;

namespace {

BikeLog planned() {
    BikeLog log;
    auto& oil = log.plan("engine-oil");
    oil.label = "Engine oil";
    oil.first.distance = km("1000");
    oil.repeat = {miles("4000"), 12, number("100")};
    oil.includes = {"oil-filter"};
    oil.estimate = money("120.00");
    Versioned<Baseline> baseline;
    baseline.value = {"engine-oil", day("2022-07-30"), km("30500"), {}, Evidence::stamp};
    log.bike.baselines.push_back(baseline);
    return log;
}

} // namespace

TEST_CASE("Limits in words") {
    CHECK(compose::limits_words({}) == "-");
    CHECK(compose::limits_words({km("6000"), 12, {}}) == "6 000 km or 12 months");
    CHECK(compose::limits_words({{}, 1, number("100")}) == "100 h or 1 month");
}

TEST_CASE("A plan as a tree") {
    const auto log = planned();
    const auto tree = nlohmann::json::parse(write::json(compose::plan_json({&log.bike})));
    REQUIRE(tree["items"].size() == 1);
    const auto& item = tree["items"][0];
    CHECK(item["item"] == "engine-oil");
    CHECK(item["first_km"] == 1000);
    CHECK(item["every_km"] == Approx(6437.376));
    CHECK(item["every_months"] == 12);
    CHECK(item["counted_from"] == "last-done");
    CHECK(item["includes"][0] == "oil-filter");
    CHECK(item["cost_minor"] == 12000);
    CHECK(item["baseline"]["date"] == "2022-07-30");
    CHECK(item["baseline"]["evidence"] == "stamp");
}

TEST_CASE("A plan as a table, as it was written") {
    const auto log = planned();
    const auto text = write::text(compose::plan_text({&log.bike}), {.width = 200});
    CHECK(text.find("4 000 mi or 100 h or 12 months") != std::string::npos);
    CHECK(text.find("with oil-filter, last done 30 Jul 2022 by your word") != std::string::npos);
    CHECK(text.find("Cost  Besides") != std::string::npos);
    auto unpriced = planned();
    unpriced.bike.plan.front().value.estimate.reset();
    CHECK(write::text(compose::plan_text({&unpriced.bike}), {.width = 200}).find("Cost") ==
          std::string::npos);
    const BikeLog empty;
    CHECK(write::text(compose::plan_text({&empty.bike}), {.width = 200}).find("plan starter") !=
          std::string::npos);
}

TEST_CASE("An offered plan says that the handbook comes first") {
    PlanItem item;
    item.slug = "cables";
    item.repeat.months = 12;
    const auto text = write::text(compose::offered_plan_text("Tourer", {item}), {.width = 400});
    CHECK(text.find("Your handbook comes first") != std::string::npos);
    CHECK(text.find("check your authority") != std::string::npos);
    const auto tree = nlohmann::json::parse(write::json(compose::offered_plan_json("Tourer", {item})));
    CHECK(tree["items"][0]["every_months"] == 12);
}
