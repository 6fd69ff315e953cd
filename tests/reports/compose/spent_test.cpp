// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/spent.h"

#include "reports/write/json.h"
#include "reports/write/text.h"
#include "tests/catch.h"
#include "tests/model/bike_log.h"

#include <nlohmann/json.hpp>

using namespace sumpbook;
using namespace sumpbook::testing;

namespace {

cost::Spending spent(std::string_view date, std::string category, Money amount) {
    cost::Spending line;
    line.bike = "Tourer";
    line.date = day(date);
    line.category = std::move(category);
    line.amount = amount;
    return line;
}

compose::SpentReport report() {
    compose::SpentReport made;
    made.spending = {spent("2023-05-01", "purchase", money("4200.00")),
                     spent("2024-05-01", "fuel", money("22.10")),
                     spent("2024-06-01", "fuel", money("18.00"))};
    auto job = spent("2024-07-01", "upkeep", money("150.80"));
    job.parts = money("31.80");
    job.labour = money("119.00");
    made.spending.push_back(job);
    return made;
}

nlohmann::json tree_of(const compose::SpentReport& report) {
    return nlohmann::json::parse(write::json(compose::spent_json(report)));
}

std::string text_of_report(const compose::SpentReport& report) {
    return write::text(compose::spent_text(report), {.width = 200});
}

} // namespace

TEST_CASE("Groups carry minor units and their currency; the bike itself stands apart") {
    const auto tree = tree_of(report());
    CHECK(tree["by"] == "category");
    REQUIRE(tree["items"].size() == 2);
    CHECK(tree["items"][0]["category"] == "fuel");
    CHECK(tree["items"][0]["cost_minor"] == 4010);
    CHECK(tree["items"][0]["currency"] == "EUR");
    CHECK(tree["items"][0]["entries"] == 2);
    CHECK(tree["items"][0]["bike"] == "Tourer");
    CHECK(tree["items"][1]["parts"][0]["cost_minor"] == 3180);
    CHECK(tree["items"][1]["labour"][0]["cost_minor"] == 11900);
    CHECK(tree["running"][0]["cost_minor"] == 19090);
    CHECK(tree["bought_and_sold"][0]["cost_minor"] == 420000);
}

TEST_CASE("Two currencies stand side by side and are never one number") {
    auto two = report();
    two.spending.push_back(spent("2024-08-01", "fuel", money("10.00", "GBP")));
    const auto tree = tree_of(two);
    CHECK(tree["items"][0]["cost_minor"].is_null());
    CHECK(tree["items"][0]["amounts"].size() == 2);
    CHECK(text_of_report(two).find("40.10 EUR + 10.00 GBP") != std::string::npos);
    CHECK(text_of_report(two).find("no exchange rate of their day") != std::string::npos);
}

TEST_CASE("The cost of distance stands with the money and the days it is of") {
    auto with_distance = report();
    with_distance.of_distance.emplace_back(
        "Tourer", cost::CostOfDistance{money("190.90"), Distance::from_whole_km(2000), day("2024-01-01"),
                                       day("2024-12-31"), 9.545});
    CHECK(text_of_report(with_distance)
              .find("Tourer: 190.90 EUR over 2 000 km from 1 Jan 2024 to 31 Dec 2024: 0.10 EUR a km, 95.45 "
                    "EUR for "
                    "1 000 km.") != std::string::npos);
    CHECK(tree_of(with_distance)["of_distance"][0]["cost_minor_per_1000km"] == 9545);
    with_distance.distance_unit = DistanceUnit::mi;
    CHECK(text_of_report(with_distance).find("153.61 EUR for 1 000 mi") != std::string::npos);
}

TEST_CASE("Buying and selling is told under the sums") {
    CHECK(text_of_report(report()).find(
              "Not in the sums above: Tourer bought on 1 May 2023 for 4 200.00 EUR.") != std::string::npos);
    CHECK(text_of_report({}).find("No money is recorded") != std::string::npos);
}

TEST_CASE("Each bike's groups stand by themselves in the tree, together in the table with their shares") {
    auto two = report();
    auto other = spent("2024-08-01", "fuel", money("9.10"));
    other.bike = "Old twin";
    two.spending.push_back(other);
    const auto tree = tree_of(two);
    REQUIRE(tree["items"].size() == 3);
    CHECK(tree["items"][0]["bike"] == "Old twin");
    CHECK(tree["items"][0]["cost_minor"] == 910);
    CHECK(tree["running"][0]["cost_minor"] == 20000);
    const auto text = text_of_report(two);
    CHECK(text.find("fuel       49.20 EUR   25 %") != std::string::npos);
    two.by = cost::GroupBy::bike;
    CHECK(tree_of(two)["items"][1]["bike"] == "Tourer");
    CHECK(tree_of(two)["items"][1]["cost_minor"] == 19090);
}

TEST_CASE("The days asked for stand in the heading and the tree") {
    auto some = report();
    some.from = day("2024-01-01");
    some.until = day("2024-12-31");
    CHECK(text_of_report(some).find("Spent from 1 Jan 2024 until 31 Dec 2024") == 0);
    CHECK(tree_of(some)["from"] == "2024-01-01");
    CHECK(tree_of(some)["until"] == "2024-12-31");
    CHECK(tree_of(report())["from"].is_null());
}

TEST_CASE("Oil bought and not used stands beside the sums, where it counts per litre used") {
    BikeLog log;
    log.add("2024-05-02", Cost{.category = "oil", .text = "4 L can"}).value.paid = money("40.00");
    log.add("2024-05-03", OilChange{.volume_in = litres("3")});
    GarageSettings settings;
    settings.currency = Currency::from_code("EUR").value();
    compose::SpentReport bought;
    compose::add_spent(bought, log.bike, settings, day("2024-06-01"));
    CHECK(bought.oil_left.empty());
    CHECK(tree_of(bought)["running"][0]["cost_minor"] == 4000);
    settings.oil_bought_counts = OilBoughtCounts::per_litre_used;
    compose::SpentReport used;
    compose::add_spent(used, log.bike, settings, day("2024-06-01"));
    const auto tree = tree_of(used);
    CHECK(tree["running"][0]["cost_minor"] == 3000);
    CHECK(tree["oil_left"][0]["cost_minor"] == 1000);
    CHECK(text_of_report(used).find("1.00 L of oil left in the can, worth 10.00 EUR") != std::string::npos);
}
