// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/consumption.h"

#include "reports/write/json.h"
#include "reports/write/text.h"
#include "tests/catch.h"
#include "tests/model/bike_log.h"

#include <nlohmann/json.hpp>

using namespace sumpbook;
using namespace sumpbook::testing;

namespace {

void fill(BikeLog& log, std::string_view date, std::string_view odometer, std::string_view volume,
          bool missed = false) {
    Fuel fuel;
    fuel.volume = litres(volume);
    fuel.missed_before = missed;
    log.add(date, fuel, odometer);
}

BikeLog used() {
    BikeLog log;
    log.add("2024-01-01", OilChange{}, "10000");
    fill(log, "2024-05-01", "10000", "12");
    fill(log, "2024-05-03", "10310", "15.3");
    fill(log, "2024-05-04", "10500", "9.5");
    fill(log, "2024-05-05", "11000", "9.5", true);
    TopUp top_up;
    top_up.volume = litres("0.6");
    top_up.level_after = number("1");
    log.add("2024-06-01", top_up, "12000");
    return log;
}

std::vector<compose::ConsumptionReport> reports(const BikeLog& log) {
    const auto odometer = usage::OdometerSeries::of(log.bike);
    return {{"Tourer", usage::fuel_use(log.bike, odometer), usage::oil_use(log.bike, odometer), {}}};
}

std::string text_of_reports(const BikeLog& log, bool details) {
    return write::text(compose::consumption_text(reports(log), GarageSettings{}, details), {.width = 400});
}

} // namespace

TEST_CASE("Overall figures with what they rest on") {
    const auto text = text_of_reports(used(), false);
    CHECK(text.find(
              "Fuel: 4.96 L/100 km, 24.8 L over 500 km, from 2 stretches between full fills; 1 left out.") !=
          std::string::npos);
    CHECK(text.find("Oil: 0.30 L per 1 000 km, 0.60 L over 2 000 km in 1 fill. Published figures run from "
                    "0.28 L per 1 000 km to 1.00 L per 1 000 "
                    "km") != std::string::npos);
    CHECK(text.find("It lies among them.") != std::string::npos);
}

TEST_CASE("The owner's manual decides where its figure is stated") {
    auto log = used();
    log.bike.details.value.handbook_oil_use_l_per_1000km = number("0.2");
    CHECK(text_of_reports(log, false).find("Your manual's figure is 0.20 L per 1 000 km. It is above it") !=
          std::string::npos);
}

TEST_CASE("Details list void stretches with their reason, and the sources") {
    const auto text = text_of_reports(used(), true);
    CHECK(text.find("a fill in between was not recorded") != std::string::npos);
    CHECK(text.find("FROM MEMORY") != std::string::npos);
}

TEST_CASE("Without two full fills there is no figure, and it says what it takes") {
    BikeLog log;
    fill(log, "2024-05-01", "10000", "12");
    CHECK(text_of_reports(log, false).find("Fuel: no figure yet.") != std::string::npos);
    CHECK(text_of_reports(log, false).find("Oil: no figure yet.") != std::string::npos);
}

TEST_CASE("The tree carries units in its names") {
    const auto tree = nlohmann::json::parse(write::json(compose::consumption_json(reports(used()))));
    const auto& fuel = tree["items"][0]["fuel"];
    CHECK(fuel["consumption_l_per_100km"] == Approx(4.96));
    REQUIRE(fuel["spans"].size() == 3);
    CHECK(fuel["spans"][0]["consumption_l_per_100km"] == Approx(4.935484));
    CHECK(fuel["spans"][2]["consumption_l_per_100km"].is_null());
    const auto& oil = tree["items"][0]["oil"];
    CHECK(oil["used_l_per_1000km"] == Approx(0.3));
    CHECK(oil["verdict"] == "in-range");
    CHECK(oil["against"] == "published");
}

TEST_CASE("Each fill says what its figure rests on and how it stands") {
    auto log = used();
    log.add("2024-06-01", OilChange{}, "12000");
    TopUp unknown_level;
    unknown_level.volume = litres("1.2");
    log.add("2024-07-01", unknown_level, "13000"); // at least 1.2 L per 1 000 km, above every figure
    log.add("2024-08-01", OilChange{}, "14000");
    const auto text = text_of_reports(log, true);
    CHECK(text.find("among the published figures") != std::string::npos);
    CHECK(text.find("levels not known, above the published figures") != std::string::npos);
    CHECK(text.find("no two known levels") != std::string::npos);
    const auto tree = nlohmann::json::parse(write::json(compose::consumption_json(reports(log))));
    const auto& oil = tree["items"][0]["oil"];
    REQUIRE(oil["fills"].size() == 3);
    CHECK(oil["fills"][0]["verdict"] == "in-range");
    CHECK(oil["fills"][1]["verdict"] == "above-range");
    CHECK(oil["fills"][1]["used_l_per_1000km"].is_null());
    CHECK(oil["fills"][2]["verdict"] == "unknown");
    CHECK(oil["published"].size() >= 5);
}

TEST_CASE("The owner's other bikes stand beside, where they have a figure") {
    auto all = reports(used());
    all[0].other_bikes = {{"Old twin", 0.45}};
    const auto text = write::text(compose::consumption_text(all, GarageSettings{}, true), {.width = 400});
    CHECK(text.find("Your other bikes: Old twin 0.45 L per 1 000 km.") != std::string::npos);
    const auto tree = nlohmann::json::parse(write::json(compose::consumption_json(all)));
    CHECK(tree["items"][0]["oil"]["other_bikes"][0]["used_l_per_1000km"] == Approx(0.45));
}
