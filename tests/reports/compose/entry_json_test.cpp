// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/entry_json.h"

#include "reports/write/json.h"
#include "tests/catch.h"
#include "tests/model/bike_log.h"

#include <nlohmann/json.hpp>

using namespace sumpbook;
using namespace sumpbook::testing;

TEST_CASE("Sample values stand in one form: a number, below one, detected or not detected") {
    Entry entry;
    entry.date = day("2024-05-01");
    Sample sample;
    sample.values = {{"Fe", ValueState::measured, number("12.0"), "mg/kg", {}},
                     {"Cr", ValueState::below, number("1"), "mg/kg", {}},
                     {"water", ValueState::detected, Decimal(), "%", {}},
                     {"glycol", ValueState::not_detected, Decimal(), "%", {}}};
    entry.body = sample;
    const auto tree = nlohmann::json::parse(write::json(compose::entry_json("Tourer", entry)));
    const auto& values = tree["values"];
    REQUIRE(values.size() == 4);
    CHECK(values[0]["value"] == 12);
    CHECK(values[1]["value"]["below"] == 1);
    CHECK(values[2]["value"] == "detected");
    CHECK(values[3]["value"] == "not-detected");
}
