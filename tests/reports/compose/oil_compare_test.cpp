// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/oil_compare.h"
#include "reports/write/json.h"
#include "reports/write/text.h"
#include "tests/catch.h"
#include "tests/model/oil/oil_garage.h"

#include <nlohmann/json.hpp>

using namespace sumpbook;
using namespace sumpbook::oil::testing;
using nlohmann::json;

namespace {

/// So many fills of either oil in turn, Fenland with twice the iron.
oil::OilComparison example(int fills_of_each) {
    OilGarage garage;
    garage.details().oil_carry_over = Decimal{0};
    int km = 10000;
    for (int i = 0; i < 2 * fills_of_each; ++i) {
        const bool marsh = i % 2 == 0;
        const std::string year = std::to_string(2000 + i);
        garage.fill(year + "-03-01", "10W-40", marsh ? "Marsh" : "Fenland", km);
        km += 4000;
        garage.draw(year + "-11-01",
                    {value("Fe", std::to_string((marsh ? 8 : 16) + i % 3)), value("Cr", "<1")}, km);
    }
    return oil::compare_oils(oil::OilRecord::of(garage.garage, garage.bike()), "Marsh", "Fenland");
}

bool holds(const std::string& text, std::string_view part) { return text.find(part) != std::string::npos; }

std::string text_of(const oil::OilComparison& comparison, bool why) {
    return write::text(compose::oil_compare_text(comparison, why), write::TextStyle{.width = 400});
}

} // namespace

TEST_CASE("Few fills cannot tell, and it is said how many can", "[compose][oil]") {
    const std::string text = text_of(example(2), false);
    CHECK(holds(text,
                "Cannot tell from so few: Marsh has 2 fills with a rate, Fenland has 2 fills; 4 fills of "
                "each are needed before any difference can show."));
    CHECK(holds(text, "below detection in 2 of 2"));
    CHECK_FALSE(holds(text, "permutation"));
}

TEST_CASE("Enough fills name the better oil, and why names the test", "[compose][oil]") {
    const std::string text = text_of(example(4), true);
    CHECK(holds(text, "Marsh wears this engine less than Fenland, by iron."));
    CHECK(holds(text, "0.0286"));
    CHECK(holds(text, "Hodges-Lehmann"));
    CHECK(holds(text, "the grade and class the handbook asks for come first"));
}

TEST_CASE("The JSON of a comparison has its fixed names", "[compose][oil]") {
    const json tree = json::parse(write::json(compose::oil_compare_json(example(4))));
    CHECK(tree["schema"] == 1);
    CHECK(tree["first"] == json{{"name", "Marsh"}, {"fills", 4}});
    CHECK(tree["word"] == "first-wears-less");
    const json& iron = tree["metals"].at(0);
    CHECK(iron["quantity"] == "Fe");
    CHECK(iron["first_mg_kg_per_1000km"].size() == 4);
    CHECK(iron["p_two_sided"] == Approx(2.0 / 70));
    CHECK(iron["shift_mg_kg_per_1000km"] > 0);
    CHECK(tree["metals"].at(1)["word"] == "not-compared");
    CHECK(tree["metals"].at(1)["p_two_sided"].is_null());
}
