// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/oil_trend.h"
#include "reports/write/json.h"
#include "reports/write/text.h"
#include "tests/catch.h"
#include "tests/model/oil/oil_garage.h"

#include <nlohmann/json.hpp>

using namespace sumpbook;
using namespace sumpbook::oil::testing;
using nlohmann::json;

namespace {

/// Five fills of 4 000 km with more iron each time; chromium is seen from the third on.
std::vector<oil::QuantityTrend> example() {
    OilGarage garage;
    garage.details().oil_carry_over = Decimal{0};
    int km = 10000;
    int iron = 8;
    for (int year = 2010; year < 2015; ++year) {
        garage.fill(std::to_string(year) + "-03-01", "10W-40", "Marsh 4T", km);
        km += 4000;
        garage.draw(std::to_string(year) + "-11-01",
                    {value("Fe", std::to_string(iron)), value("Cr", year < 2012 ? "<1" : "2")}, km);
        iron += 4;
    }
    return oil::oil_trends(oil::OilRecord::of(garage.garage, garage.bike()), oil::default_profile());
}

bool holds(const std::string& text, std::string_view part) { return text.find(part) != std::string::npos; }

std::string flowing(const document::Document& document) {
    return write::text(document, write::TextStyle{.width = 400});
}

} // namespace

TEST_CASE("The first answer is in plain words, without a p", "[compose][oil]") {
    const std::string text = flowing(compose::oil_trend_text(example()));
    CHECK(holds(text, "Rising from fill to fill: iron."));
    CHECK(holds(text, "The engine sheds more iron with each fill"));
    CHECK(holds(text, "Heron, wear metals against their limits"));
    CHECK_FALSE(holds(text, "Mann-Kendall"));
    CHECK_FALSE(holds(text, " p "));
}

TEST_CASE("One quantity shows its samples, and with why what stands behind the word", "[compose][oil]") {
    const auto trends = example();
    const std::string plain = flowing(compose::oil_trend_details_text(trends, false));
    CHECK(holds(plain, "Rising: over 5 fills the wear of iron goes up."));
    CHECK(holds(plain, "2014-11-01"));
    CHECK(holds(plain, "at most 0.25"));
    CHECK(holds(plain, "2 of 5 fills are below detection"));
    CHECK_FALSE(holds(plain, "Theil-Sen"));
    const std::string why = flowing(compose::oil_trend_details_text(trends, true));
    CHECK(holds(why, "Median slope (Theil-Sen)"));
    CHECK(holds(why, "10, two-sided p 0.0167 exact"));
    CHECK(holds(why, "0.2500 mg/kg in 1 000 km for each 1 000 km ridden"));
}

TEST_CASE("No sample is a sentence, not an empty page", "[compose][oil]") {
    CHECK(holds(flowing(compose::oil_trend_text({})), "No sample of used oil is recorded."));
    CHECK(holds(flowing(compose::oil_trend_details_text({}, true)), "No sample of used oil is recorded."));
}

TEST_CASE("The JSON of a trend has its fixed names", "[compose][oil]") {
    const json items = json::parse(write::json(compose::oil_trend_json(example())))["items"];
    REQUIRE(items.size() == 2);
    const json& iron = items.at(0);
    CHECK(iron["bike"] == "Heron");
    CHECK(iron["quantity"] == "Fe");
    CHECK(iron["of"] == "wear-rate");
    CHECK(iron["word"] == "rising");
    CHECK(iron["fills"] == 5);
    CHECK(iron["mann_kendall_s"] == 10);
    CHECK(iron["theil_sen_slope"] == 0.25);
    CHECK(iron["points"].at(4)["corrected_mg_kg_per_1000km"] == 6);
    CHECK(iron["points"].at(4)["distance_on_oil_km"] == 4000);
    const json& chromium = items.at(1);
    CHECK(chromium["fills_below"] == 2);
    CHECK(chromium["theil_sen_slope"].is_null());
    CHECK(chromium["points"].at(0)["value"] == json{{"below", 1}});
    CHECK(chromium["points"].at(0)["wear_is_at_most"] == true);
}
