// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/oil_life.h"
#include "reports/write/json.h"
#include "reports/write/text.h"
#include "tests/catch.h"
#include "tests/model/oil/oil_garage.h"

#include <nlohmann/json.hpp>

using namespace sumpbook;
using namespace sumpbook::oil::testing;
using nlohmann::json;

namespace {

SampleValue base(const char* number) { return value("tbn", number, {}, "ASTM D2896"); }

/// New oil of base number 8, three samples down to 5.5 at 5 000 km, and an interval as planned; 0: none.
std::vector<oil::OilLife> example(int planned_km, const char* last = "5.5") {
    OilGarage garage;
    garage.new_oil("2023-12-01", {base("8")});
    garage.fill("2024-01-01", "10W-40", "Marsh 4T", 10000);
    garage.draw("2024-03-01", {base("6.9")}, 12000);
    garage.draw("2024-05-01", {base("6.2")}, 14000);
    garage.draw("2024-06-01", {base(last)}, 15000);
    if (planned_km > 0) {
        garage.bike().plan.push_back({});
        garage.bike().plan.back().value.slug = "engine-oil";
        garage.bike().plan.back().value.repeat.distance =
            WrittenDistance{Decimal{planned_km}, DistanceUnit::km};
    }
    return {
        oil::oil_life(oil::OilRecord::of(garage.garage, garage.bike()), "Marsh 4T", oil::default_profile())};
}

bool holds(const std::string& text, std::string_view part) { return text.find(part) != std::string::npos; }

std::string text_of(const std::vector<oil::OilLife>& lives, bool why = false) {
    return write::text(compose::oil_life_text(lives, why), write::TextStyle{.width = 400});
}

} // namespace

TEST_CASE("How long the oil lasts, how sure that is and what to do", "[compose][oil]") {
    const std::string inside = text_of(example(6000));
    CHECK(holds(inside, "On this evidence it lasts about 8 300 km, between "));
    CHECK(holds(inside, "first comes: base number down to half of the new oil's."));
    CHECK(holds(inside, "● Keep the planned interval of 6 000 km"));
    CHECK(holds(inside, "The fill in the engine has run 5 000 km at the last reading."));
    CHECK(holds(text_of(example(8000)), "▲ The planned interval of 8 000 km may be too long"));
    CHECK(holds(text_of(example(12000)), "▲ The planned interval of 12 000 km is longer than that"));
    CHECK(holds(text_of(example(0)), "No distance is planned for the engine oil"));
    CHECK(holds(text_of(example(12000, "3.9")), "■ The fill in use is there already"));
}

TEST_CASE("Nothing is promised past the handbook's interval", "[compose][oil]") {
    for (const int planned : {0, 6000, 12000}) {
        const std::string text = text_of(example(planned));
        CHECK(holds(text, "On this evidence"));
        CHECK(
            holds(text, "The maker's handbook sets the longest interval; these samples do not lengthen it."));
    }
}

TEST_CASE("With why the values and the sources stand behind the marks", "[compose][oil]") {
    CHECK_FALSE(holds(text_of(example(6000)), "new oil "));
    const std::string why = text_of(example(6000), true);
    CHECK(holds(why, "new oil"));
    CHECK(holds(why, "80 of 100 cases"));
    CHECK(holds(why, "reliableplant.com"));
    CHECK(holds(text_of(std::vector<oil::OilLife>{}), "No sample of used engine oil"));
}

TEST_CASE("The JSON of an oil's life has its fixed names", "[compose][oil]") {
    const json item = json::parse(write::json(compose::oil_life_json(example(6000))))["items"].at(0);
    CHECK(item["oil"] == "Marsh 4T");
    CHECK(item["in_use"] == true);
    CHECK(item["interval"] == "inside");
    CHECK(item["interval_km"] == 6000);
    CHECK(item["first"] == "half-base-number");
    CHECK(item["earliest_km"] < item["middle_km"]);
    CHECK(item["middle_km"] < item["latest_km"]);
    const json& half = item["marks"].at(0);
    CHECK(half["mark"] == "half-base-number");
    CHECK(half["method"] == "perchloric");
    CHECK(half["level"] == 4);
    CHECK(half["range"] == "bounds");
    CHECK(half["points"].size() == 4);
    CHECK(half["points"].at(0)["distance_on_oil_km"] == 0);
    CHECK(half["unknown"].is_null());
}
